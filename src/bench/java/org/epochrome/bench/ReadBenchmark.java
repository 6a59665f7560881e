package org.epochrome.bench;

import java.nio.file.Path;
import org.epochrome.io.head.FrameFile;
import org.epochrome.io.read.FrameReader;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Setup;

/** Reading a grey frame of 16 bits. */
public class ReadBenchmark extends PixelBenchmark {
    @Param({"fits", "fits-gzip", "fits-rice", "tiff", "png"})
    public String format;

    private Path file;

    @Setup
    public void prepare(DemoScene scene) throws Exception {
        file = switch (format) {
            case "fits" -> scene.frame;
            case "fits-gzip" -> scene.gzipped();
            case "fits-rice" -> scene.tiled();
            case "tiff" -> scene.as("frame.tif");
            case "png" -> scene.as("frame.png");
            default -> throw new IllegalArgumentException(format);
        };
    }

    @Benchmark
    public FrameFile read() {
        return FrameReader.read(file);
    }
}

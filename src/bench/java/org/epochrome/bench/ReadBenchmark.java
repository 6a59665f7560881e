package org.epochrome.bench;

import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.epochrome.io.head.FrameFile;
import org.epochrome.io.read.FrameReader;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Reading a grey frame of 16 bits. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@OperationsPerInvocation(DemoScene.PIXELS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class ReadBenchmark {
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

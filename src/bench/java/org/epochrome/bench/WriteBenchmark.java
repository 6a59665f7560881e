package org.epochrome.bench;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.epochrome.image.Plane;
import org.epochrome.io.fits.FitsWriter;
import org.epochrome.io.write.PictureWriter;
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

/** Writing a colour picture: FITS with 32-bit floats, TIFF and PNG with 16 bits, JPEG with 8. The times are for a pixel of three bands. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@OperationsPerInvocation(DemoScene.PIXELS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class WriteBenchmark {
    private static final PictureWriter.Caption CAPTION = new PictureWriter.Caption("", Optional.empty(), "");

    @Param({"fits", "tif", "png", "jpg"})
    public String format;

    private Path file;
    private List<Plane> planes;

    @Setup
    public void prepare(DemoScene scene) {
        file = scene.folder.resolve("written." + format);
        planes = scene.frames.planes();
    }

    @Benchmark
    public void write() {
        if (format.equals("fits")) {
            FitsWriter.write(file, planes, List.of(), List.of(), true);
        } else {
            PictureWriter.write(file, planes, CAPTION, true);
        }
    }
}

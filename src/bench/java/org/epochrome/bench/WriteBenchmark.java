package org.epochrome.bench;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.epochrome.image.Plane;
import org.epochrome.io.fits.FitsWriter;
import org.epochrome.io.write.PictureWriter;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Setup;

/** Writing a colour picture: FITS with 32-bit floats, TIFF and PNG with 16 bits, JPEG with 8. The times are for a pixel of three bands. */
public class WriteBenchmark extends PixelBenchmark {
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

package org.epochrome.document;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.epochrome.image.Binning;
import org.epochrome.io.fits.FitsCard;
import org.epochrome.io.read.FrameReader;
import org.epochrome.io.write.FrameWriter;

/** The demo's sessions on pixels twice as large, for commands whose numbers nobody reads. */
final class SmallerDemo {
    private static final int FACTOR = 2;
    /** When the frames of Jupiter began, which their headers tell; the others have sheets. */
    private static final Map<String, String> STARTS =
            Map.of("R", "2024-12-18T19:21:25", "G", "2024-12-18T19:23:30", "B", "2024-12-18T19:25:35");

    private SmallerDemo() {}

    static void write(Path demo, Path to) throws IOException {
        try (Stream<Path> all = Files.walk(demo)) {
            for (Path file : all.filter(Files::isRegularFile).toList()) {
                Path smaller = to.resolve(demo.relativize(file).toString());
                Files.createDirectories(smaller.getParent());
                if (file.toString().matches(".*\\.(fits|png|tif)")) {
                    FrameWriter.write(
                            smaller,
                            Binning.by(FACTOR, FrameReader.read(file).planes().get(0)),
                            cards(file.getFileName().toString()),
                            false);
                } else {
                    Files.copy(file, smaller);
                }
            }
        }
    }

    private static List<FitsCard> cards(String name) {
        if (!name.startsWith("jupiter")) {
            return List.of();
        }
        String band = name.substring("jupiter-".length(), "jupiter-".length() + 1);
        return List.of(
                new FitsCard("DATE-OBS", STARTS.get(band), ""),
                new FitsCard("EXPTIME", 120.0, ""),
                new FitsCard("FILTER", band, ""),
                new FitsCard("OBJECT", "Jupiter", ""));
    }
}

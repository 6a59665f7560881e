package org.epochrome.desktop.render;

import java.nio.IntBuffer;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import org.epochrome.colour.finish.Quicklook;
import org.epochrome.image.Binning;
import org.epochrome.image.Plane;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.read.DatedFrame;

/** Small pictures of frames, made one after the other in the background. */
public final class Thumbnails {
    private static final int SIZE_PX = 26;

    private final Executor background;
    private final Executor face;
    private final Map<Path, MipMap.Level> made = new HashMap<>();
    private final Set<Path> asked = new HashSet<>();
    private CompletableFuture<Void> last = CompletableFuture.completedFuture(null);

    Thumbnails(Executor background, Executor face) {
        this.background = background;
        this.face = face;
    }

    /**
     * The picture of a frame, if it is made; else it is made now.
     *
     * @param then runs once a picture has been made
     */
    public Optional<MipMap.Level> of(DatedFrame frame, Runnable then) {
        Path file = frame.head().file();
        Optional<MipMap.Level> known = Optional.ofNullable(made.get(file));
        if (known.isEmpty() && asked.add(file)) {
            last = last.thenRunAsync(
                    () -> {
                        Optional<MipMap.Level> small = small(frame);
                        face.execute(() -> {
                            small.ifPresent(level -> made.put(file, level));
                            then.run();
                        });
                    },
                    background);
        }
        return known;
    }

    /** Nothing where the file cannot be read: that is told when it is combined. */
    private static Optional<MipMap.Level> small(DatedFrame frame) {
        try {
            List<Plane> planes = frame.load().planes();
            int across = Math.max(planes.get(0).width(), planes.get(0).height());
            int factor = Math.max(1, across / SIZE_PX);
            List<Plane> shown = Quicklook.linear(
                    planes.stream().map(p -> Binning.by(factor, p)).toList());
            int width = shown.get(0).width();
            int[] argb = new int[width * shown.get(0).height()];
            for (int i = 0; i < argb.length; i++) {
                argb[i] = 0xff000000;
                for (int c = 0; c < 3; c++) {
                    float value = shown.get(Math.min(c, shown.size() - 1)).data()[i];
                    int level = Float.isNaN(value) ? 0 : Math.max(0, Math.min(255, Math.round(255 * value)));
                    argb[i] |= level << (16 - 8 * c);
                }
            }
            return Optional.of(
                    new MipMap.Level(IntBuffer.wrap(argb), width, shown.get(0).height(), factor));
        } catch (FrameRefused | OutOfMemoryError e) {
            return Optional.empty();
        }
    }
}

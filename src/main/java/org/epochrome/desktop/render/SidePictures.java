package org.epochrome.desktop.render;

import java.util.List;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import org.epochrome.colour.finish.Look;
import org.epochrome.disk.Disk;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.recipe.Exposure;

/** Pictures of something else than the result: frames as they were shot, the turning globe. */
public final class SidePictures {
    private final LatestTaskRunner aside;
    private final Consumer<Throwable> refused;

    SidePictures(Executor background, Executor face, Consumer<Throwable> refused) {
        aside = new LatestTaskRunner(background, face, true);
        this.refused = refused;
    }

    /** A frame as it was shot. */
    public void frame(Exposure exposure, Disk disk, boolean lifted, Consumer<ScreenPicture> done) {
        aside.submit(
                progress -> Pictures.frame(exposure, disk, lifted ? Display.STRETCHED : Display.LINEAR),
                done,
                refused,
                (at, doing) -> {});
    }

    /** The stills of the turning globe. */
    public void turning(Combination c, Look look, Consumer<List<ScreenPicture>> done) {
        aside.submit(progress -> Pictures.turning(c, look), done, refused, (at, doing) -> {});
    }
}

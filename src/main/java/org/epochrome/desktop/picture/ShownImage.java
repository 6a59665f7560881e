package org.epochrome.desktop.picture;

import javafx.scene.image.ImageView;
import javafx.scene.image.PixelBuffer;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import org.epochrome.desktop.render.MipMap;
import org.epochrome.desktop.render.ScreenPicture;
import org.epochrome.desktop.state.Zoom;

/** A picture in the view, on pixels that are as fine as the screen can show. */
final class ShownImage extends ImageView {
    /** From this magnification on pixels are shown as squares. */
    private static final double SQUARES = 3;

    /**
     * Puts a picture where it belongs, and tells on how much coarser pixels.
     *
     * @param density how many pixels of the screen one of the window's is wide
     */
    int place(ScreenPicture s, Zoom z, double density) {
        MipMap.Level level = MipMap.fitting(s.levels(), z.scale() * s.factor() * density);
        if (!(getImage() instanceof Pixels pixels) || !pixels.level.equals(level)) {
            setImage(new Pixels(level));
        }
        setX(z.left());
        setY(z.top());
        setFitWidth(z.scale() * level.width() * level.times() * s.factor());
        setFitHeight(z.scale() * level.height() * level.times() * s.factor());
        setSmooth(z.scale() < SQUARES || s.factor() > 1);
        return level.times();
    }

    /** An image that looks into the pixels of a picture, without a copy. */
    private static final class Pixels extends WritableImage {
        private final MipMap.Level level;

        Pixels(MipMap.Level level) {
            super(new PixelBuffer<>(level.width(), level.height(), level.argb(), PixelFormat.getIntArgbPreInstance()));
            this.level = level;
        }
    }
}

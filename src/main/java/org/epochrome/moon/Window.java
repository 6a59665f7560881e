package org.epochrome.moon;

/**
 * Some pixels of a frame around a companion.
 *
 * @param left number of the first column
 * @param top number of the first row
 * @param width pixels
 * @param height pixels
 */
public record Window(int left, int top, int width, int height) {
    public static Window around(MoonFrame frame, MoonOrShadow companion, double reachPx) {
        SkyPoint place = companion.at(frame.mid());
        double x = frame.x(place);
        double y = frame.y(place);
        int left = (int) Math.max(0, Math.floor(x - reachPx));
        int top = (int) Math.max(0, Math.floor(y - reachPx));
        int right = (int) Math.min(frame.width() - 1, Math.ceil(x + reachPx));
        int bottom = (int) Math.min(frame.height() - 1, Math.ceil(y + reachPx));
        return new Window(left, top, right - left + 1, bottom - top + 1);
    }
}

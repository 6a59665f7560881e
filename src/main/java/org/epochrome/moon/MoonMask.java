package org.epochrome.moon;

import java.util.ArrayList;
import java.util.List;
import org.epochrome.image.Plane;

/**
 * Circles around moons and shadows at the limb or beside it, one list for each frame: pixels that a disk fit leaves out, since they
 * would pass for wings, a wider blur or a limb. They reach as far as a usual blur carries light, for they are made before
 * the blur is known.
 */
public final class MoonMask {
    /** The mask that hides nothing. */
    public static final MoonMask NONE = new MoonMask(List.of());

    /**
     * Least blur that is assumed, as a fraction of the radius: fits in broad strokes cannot tell how sharp sharp frames are. From painted
     * moons; with 1/60 the circles cut limbs at 14 pixels.
     */
    private static final double LEAST_BLUR = 1 / 80.0;
    /** How far a blur carries light. */
    private static final double REACH_BLURS = 4;

    private final List<List<Circle>> circles;

    /** A part of a frame, pixels. */
    private record Circle(double x, double y, double radiusPx) {
        boolean contains(double placeX, double placeY, double marginPx) {
            return Math.hypot(placeX - x, placeY - y) + marginPx < radiusPx;
        }
    }

    private MoonMask(List<List<Circle>> circles) {
        this.circles = circles;
    }

    /**
     * The mask of those that stand where limb, wings and sky are fitted.
     *
     * @param frames with the full frames' pixels; tracks may have been found on coarser ones
     */
    public static MoonMask of(List<MoonTrack> tracks, List<MoonFrame> frames, LimbZone zone) {
        List<List<Circle>> circles = new ArrayList<>();
        for (int i = 0; i < frames.size(); i++) {
            MoonFrame frame = frames.get(i);
            double blurPx = Math.max(frame.blurPx(), LEAST_BLUR * frame.radiusPx());
            List<Circle> list = new ArrayList<>();
            for (MoonTrack track : tracks) {
                SpotFit found = track.places().get(i);
                if (found != null) {
                    MoonOrShadow companion = track.companion();
                    SkyPoint place = track.plain(found) ? found.place() : companion.at(frame.mid());
                    if (zone.holds(frame, companion, place, blurPx)) {
                        double reach = frame.spot(companion).coreReachPx() + REACH_BLURS * (blurPx - frame.blurPx());
                        list.add(new Circle(frame.x(place), frame.y(place), reach));
                    }
                }
            }
            circles.add(list);
        }
        return circles.stream().allMatch(List::isEmpty) ? NONE : new MoonMask(circles);
    }

    public boolean isEmpty() {
        return circles.isEmpty();
    }

    /** Whether a round thing in a frame lies within one circle. */
    public boolean covers(int frame, double x, double y, double radiusPx) {
        return !isEmpty() && circles.get(frame).stream().anyMatch(c -> c.contains(x, y, radiusPx));
    }

    /** A frame's pixels, without data within the circles. */
    public Plane hidden(int frame, Plane plane) {
        if (isEmpty() || circles.get(frame).isEmpty()) {
            return plane;
        }
        Plane result = plane.copy();
        for (Circle c : circles.get(frame)) {
            int top = (int) Math.max(0, Math.ceil(c.y - c.radiusPx));
            int left = (int) Math.max(0, Math.ceil(c.x - c.radiusPx));
            for (int y = top; y <= Math.min(plane.height() - 1, c.y + c.radiusPx); y++) {
                for (int x = left; x <= Math.min(plane.width() - 1, c.x + c.radiusPx); x++) {
                    if (c.contains(x, y, 0)) {
                        result.set(x, y, Float.NaN);
                    }
                }
            }
        }
        return result;
    }
}

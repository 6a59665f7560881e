package org.epochrome.moon;

import java.util.List;
import java.util.Optional;
import org.epochrome.text.Message;

/**
 * A moon or shadow that was found.
 *
 * @param name of the moon; empty if no ephemeris predicts it
 * @param shadow whether it is the moon's shadow
 * @param where against the disk at the epoch
 * @param radiusPx of its disk on the output
 * @param x its place at the epoch on the output, pixels
 * @param y the same
 * @param frames what the frames that hold it say
 */
public record FoundMoon(
        Optional<String> name, boolean shadow, Where where, double radiusPx, double x, double y, List<InFrame> frames) {
    /** Where a companion stands, seen from the Earth. */
    public enum Where {
        IN_FRONT(Message.of("moon.inFront")),
        BESIDE(Message.of("moon.beside")),
        BEHIND(Message.of("moon.behind"));

        private final Message words;

        Where(Message words) {
            this.words = words;
        }

        public String words() {
            return words.toString();
        }
    }

    /**
     * What one frame says.
     *
     * @param exposure number of the frame
     * @param x its place on the course, frame's pixels
     * @param y the same
     * @param offX how far its own fit lies off the course that all frames agree on, frame's pixels
     * @param offY the same
     * @param sigmaPx standard error of its own fit, per axis
     * @param level brightness of the moon, 1 for the even globe's brightest part; of a shadow the part of light let through
     * @param flux all the light of the moon, or all that the shadow takes (negative), in the frame's units times pixels
     * @param plain whether the frame shows it plainly, so that its place counted
     */
    public record InFrame(
            int exposure,
            double x,
            double y,
            double offX,
            double offY,
            double sigmaPx,
            double level,
            double flux,
            boolean plain) {}

    /** Whether it stands within a distance of a picture. */
    public boolean isNear(int width, int height, double distancePx) {
        return Math.max(Math.max(-x, x - width), Math.max(-y, y - height)) < distancePx;
    }

    /** How it is called: its name, or what it is. */
    public String title() {
        if (shadow) {
            return name.map(n -> Message.text("moon.theShadowOf", n)).orElseGet(() -> Message.text("moon.aShadow"));
        }
        return name.orElseGet(() -> Message.text("moon.aMoon"));
    }
}

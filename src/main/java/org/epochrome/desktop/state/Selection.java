package org.epochrome.desktop.state;

/**
 * What the user looks at.
 *
 * @param topic what the side is about
 * @param frame number of the frame chosen on the ribbon, in the order of the session
 */
public record Selection(Topic topic, int frame) {
    public static final Selection START = new Selection(Topic.SESSION, 0);

    public Selection about(Topic other) {
        return new Selection(other, frame);
    }

    public Selection of(int other) {
        return new Selection(topic, other);
    }
}

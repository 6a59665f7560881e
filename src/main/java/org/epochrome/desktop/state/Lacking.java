package org.epochrome.desktop.state;

import java.util.Optional;

/** What a session cannot do without, and the user may not have entered yet. */
public enum Lacking {
    SITE,
    NORTH;

    /** What the message of a refusal asks for. */
    public static Optional<Lacking> of(String key) {
        return switch (key) {
            case "check.mountNeedsSite" -> Optional.of(SITE);
            case "north.noAxis" -> Optional.of(NORTH);
            default -> Optional.empty();
        };
    }
}

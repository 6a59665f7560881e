package org.epochrome.io.identify;

/** Which moment of a recording a single instant stands for; capture programs differ in it. */
public enum TimestampMeaning {
    START,
    MIDDLE,
    END
}

package org.epochrome.io;

/** Which moment of a recording a single instant stands for; capture programs differ in it. */
public enum ClockMeaning {
    START,
    MIDDLE,
    END
}

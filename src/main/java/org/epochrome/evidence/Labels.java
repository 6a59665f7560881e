package org.epochrome.evidence;

import static org.epochrome.evidence.Html.number;

import java.time.Instant;
import org.epochrome.session.combine.Combination.FrameResult;
import org.epochrome.time.UtcText;

/** How frames, instants and pairs of numbers are named in the report. */
final class Labels {
    private Labels() {}

    static Markup band(FrameResult f) {
        return band(f.exposure().band().name());
    }

    /** A band's name in its ink. */
    static Markup band(String band) {
        return Markup.element("b", Markup.attribute("style", "color:" + Drawings.ink(band)), band);
    }

    static String name(FrameResult f) {
        return f.exposure().frame().head().file().getFileName().toString();
    }

    static String clock(Instant instant) {
        return UtcText.format(instant).replace('T', ' ').replace("Z", "");
    }

    static String pair(double x, double y) {
        return number("%+.2f", x) + "\u2002" + number("%+.2f", y);
    }
}

package org.epochrome.evidence;

import static org.epochrome.evidence.Html.number;
import static org.epochrome.evidence.Html.text;

import java.time.Instant;
import org.epochrome.session.combine.Combination.FrameResult;
import org.epochrome.time.UtcText;

/** How frames, instants and pairs of numbers are named in the report. */
final class Labels {
    private Labels() {}

    static String band(FrameResult f) {
        String band = f.exposure().band().name();
        return "<b style=\"color:" + Drawings.ink(band) + "\">" + text(band) + "</b>";
    }

    static String name(FrameResult f) {
        return text(f.exposure().frame().head().file().getFileName().toString());
    }

    static String clock(Instant instant) {
        return text(UtcText.format(instant).replace('T', ' ').replace("Z", ""));
    }

    static String pair(double x, double y) {
        return number("%+.2f", x) + "&ensp;" + number("%+.2f", y);
    }
}

package org.epochrome.session.sessionfile;

import static org.epochrome.session.sessionfile.SessionReading.constant;
import static org.epochrome.session.sessionfile.SessionReading.number;
import static org.epochrome.session.sessionfile.SessionReading.or;
import static org.epochrome.session.sessionfile.SessionReading.several;

import java.util.List;
import java.util.Optional;
import org.epochrome.colour.Gains;
import org.epochrome.colour.Tone;
import org.epochrome.colour.White;
import org.epochrome.colour.WhiteBalance;
import org.epochrome.colour.finish.Framing;
import org.epochrome.colour.finish.Look;
import org.epochrome.colour.finish.Sharpening;

/** From the keys of a session file to the look of finished pictures. */
final class LookReading {
    private LookReading() {}

    /** @throws IllegalArgumentException if a value has no meaning; one sentence that says which */
    static Look look(SessionSchema.Look l) {
        if (l == null) {
            return Look.DEFAULT;
        }
        return new Look(
                l.white() == null ? Look.DEFAULT.white() : white(l.white()),
                l.detail() == null ? Look.DEFAULT.sharpening() : detail(l.detail()),
                l.tone() == null ? Look.DEFAULT.tone() : tone(l.tone()),
                l.framing() == null ? Look.DEFAULT.framing() : framing(l.framing()));
    }

    private static WhiteBalance white(SessionSchema.White w) {
        White balance = w.balance() == null ? Look.DEFAULT.white().white() : constant(White.class, w.balance());
        if (w.gains() == null) {
            return new WhiteBalance(balance, Optional.empty());
        }
        List<Double> g = several(w.gains(), 3, "the gains");
        return new WhiteBalance(balance, Optional.of(new Gains(g.get(0), g.get(1), g.get(2))));
    }

    private static Sharpening detail(SessionSchema.Detail d) {
        Sharpening usual = Sharpening.DEFAULT;
        return new Sharpening(
                or(d.deblur(), usual.deblur()),
                or(d.iterations(), usual.iterations()),
                or(d.smoothing(), usual.smoothing()),
                or(d.gain(), usual.gain()),
                number(d.peakPx()),
                number(d.peakArcsec()),
                or(d.octaves(), usual.octaves()),
                or(d.threshold(), usual.threshold()),
                d.of() == null ? usual.eachBand() : eachBand(d.of()));
    }

    private static boolean eachBand(String of) {
        return switch (of) {
            case "luminance" -> false;
            case "bands" -> true;
            default -> throw new IllegalArgumentException("detail must be of luminance or bands, not '" + of + "'");
        };
    }

    private static Tone tone(SessionSchema.Tone t) {
        Tone usual = Tone.DEFAULT;
        return new Tone(
                or(t.brightness(), usual.brightness()),
                or(t.black(), usual.black()),
                or(t.contrast(), usual.contrast()),
                or(t.saturation(), usual.saturation()));
    }

    private static Framing framing(SessionSchema.Framing f) {
        return new Framing(
                f.orientation() == null
                        ? Framing.AS_SHOT.orientation()
                        : constant(Framing.Orientation.class, f.orientation()),
                number(f.margin()),
                number(f.enlarge()),
                Optional.ofNullable(f.canvas())
                        .map(c -> several(c, 2, "the canvas"))
                        .map(c -> new Framing.Canvas(c.get(0), c.get(1))),
                or(f.caption(), false));
    }
}

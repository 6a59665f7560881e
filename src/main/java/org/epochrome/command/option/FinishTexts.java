package org.epochrome.command.option;

import java.util.Locale;
import java.util.function.UnaryOperator;
import org.epochrome.colour.Gains;
import org.epochrome.colour.finish.ChannelOffsets;
import org.epochrome.colour.finish.Framing;
import org.epochrome.colour.finish.LevelPoints;
import org.epochrome.colour.finish.Sharpening;
import org.epochrome.colour.finish.ToneCurve;
import org.epochrome.text.Message;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** How settings of finished pictures are written on the command line; each refusal says how to write it right. */
final class FinishTexts {
    private FinishTexts() {}

    /** Which way is up. */
    static final class WayUp implements ITypeConverter<Framing.Orientation> {
        @Override
        public Framing.Orientation convert(String text) {
            for (Framing.Orientation orientation : Framing.Orientation.values()) {
                if (orientation.name().equalsIgnoreCase(text.replace('-', '_'))) {
                    return orientation;
                }
            }
            throw new TypeConversionException(Message.text("typed.oneOf", text, "as-shot, north-up, south-up"));
        }
    }

    /** A scale in pixels or arcseconds, as what it makes of a sharpening. */
    static final class Scale implements ITypeConverter<UnaryOperator<Sharpening>> {
        private static final String ARCSEC = "arcsec";

        @Override
        public UnaryOperator<Sharpening> convert(String text) {
            boolean arcsec = text.endsWith(ARCSEC);
            try {
                double scale = Double.parseDouble(arcsec ? text.substring(0, text.length() - ARCSEC.length()) : text);
                return arcsec ? s -> s.peakingAtArcsec(scale) : s -> s.peakingAt(scale);
            } catch (NumberFormatException e) {
                throw new TypeConversionException(Message.text("typed.detailScale", text));
            }
        }
    }

    /** Width and height. */
    static final class Size implements ITypeConverter<Framing.Canvas> {
        @Override
        public Framing.Canvas convert(String text) {
            String[] parts = text.toLowerCase(Locale.ROOT).split("x", -1);
            try {
                if (parts.length == 2) {
                    return new Framing.Canvas(Integer.parseInt(parts[0]), Integer.parseInt(parts[1]));
                }
            } catch (NumberFormatException e) {
                // refused below
            } catch (IllegalArgumentException e) {
                throw new TypeConversionException(e.getMessage());
            }
            throw new TypeConversionException(Message.text("typed.canvas", text));
        }
    }

    /** Three numbers with commas between them. */
    private abstract static class Three<T> implements ITypeConverter<T> {
        private final UnaryOperator<String> refusal;

        /** @param refusal tells what cannot be read */
        Three(UnaryOperator<String> refusal) {
            this.refusal = refusal;
        }

        abstract T of(double first, double second, double third);

        @Override
        public T convert(String text) {
            String[] parts = text.split(",", -1);
            try {
                if (parts.length == 3) {
                    return of(Double.parseDouble(parts[0]), Double.parseDouble(parts[1]), Double.parseDouble(parts[2]));
                }
            } catch (NumberFormatException e) {
                // refused below
            } catch (IllegalArgumentException e) {
                throw new TypeConversionException(e.getMessage());
            }
            throw new TypeConversionException(refusal.apply(text));
        }
    }

    /** Two numbers of radii. */
    static final class Middle implements ITypeConverter<Framing.Centre> {
        @Override
        public Framing.Centre convert(String text) {
            String[] parts = text.split(",", -1);
            try {
                if (parts.length == 2) {
                    return new Framing.Centre(Double.parseDouble(parts[0]), Double.parseDouble(parts[1]));
                }
            } catch (NumberFormatException e) {
                // refused below
            } catch (IllegalArgumentException e) {
                throw new TypeConversionException(e.getMessage());
            }
            throw new TypeConversionException(Message.text("typed.centre", text));
        }
    }

    /** Three factors. */
    static final class Factors extends Three<Gains> {
        Factors() {
            super(text -> Message.text("typed.gains", text));
        }

        @Override
        Gains of(double red, double green, double blue) {
            return new Gains(red, green, blue);
        }
    }

    /** Three offsets. */
    static final class Offsets extends Three<ChannelOffsets> {
        Offsets() {
            super(text -> Message.text("typed.offsets", text));
        }

        @Override
        ChannelOffsets of(double red, double green, double blue) {
            return new ChannelOffsets(red, green, blue);
        }
    }

    /** Black, middle and white. */
    static final class Levels extends Three<LevelPoints> {
        Levels() {
            super(text -> Message.text("typed.levels", text));
        }

        @Override
        LevelPoints of(double black, double mid, double white) {
            return new LevelPoints(black, mid, white);
        }
    }

    /** The three points of a curve. */
    static final class Curve extends Three<ToneCurve> {
        Curve() {
            super(text -> Message.text("typed.toneCurve", text));
        }

        @Override
        ToneCurve of(double quarter, double half, double threeQuarters) {
            return new ToneCurve(quarter, half, threeQuarters);
        }
    }
}

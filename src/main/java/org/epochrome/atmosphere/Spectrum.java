package org.epochrome.atmosphere;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.interpolation.LinearInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;
import org.epochrome.image.Passband;
import org.epochrome.text.Message;

/**
 * How strongly each wavelength counts in a recording, in photons. Only its course within a passband matters, not the level.
 */
public final class Spectrum {
    /** Every wavelength counts alike, whatever planet, air and camera do to it. */
    public static final Spectrum EVEN = new Spectrum(nm -> 1, List.of(), false);

    /** Sunlight, whatever planet, air and camera do to it. */
    public static final Spectrum SUNLIGHT = new Spectrum(SolarSpectrum::photons, List.of(), false);

    /**
     * Quantum efficiency of planetary cameras: the common shape of makers' curves for back-illuminated silicon, no source; makes differ
     * by a tenth.
     */
    private static final List<Point> SILICON = List.of(
            new Point(330, 0.30),
            new Point(360, 0.42),
            new Point(400, 0.60),
            new Point(450, 0.75),
            new Point(500, 0.82),
            new Point(550, 0.82),
            new Point(600, 0.78),
            new Point(650, 0.70),
            new Point(700, 0.60),
            new Point(750, 0.50),
            new Point(800, 0.40),
            new Point(850, 0.30),
            new Point(900, 0.21),
            new Point(950, 0.13),
            new Point(1000, 0.06));

    /** Sunlight from a planet through the air to a silicon camera. */
    public static final Spectrum CAMERA = new Spectrum(responded(SILICON), List.of(), true);

    private static final int STEPS = 256;
    private static final double FAINTEST = 1e-6;

    private final DoubleUnaryOperator weight;
    private final List<Point> curve;
    private final boolean coloured;

    /** @param coloured whether planet and air colour it */
    private Spectrum(DoubleUnaryOperator weight, List<Point> curve, boolean coloured) {
        this.weight = weight;
        this.curve = List.copyOf(curve);
        this.coloured = coloured;
    }

    /**
     * What a planet and the air make of it; {@link #EVEN} and {@link #SUNLIGHT} stay as they are.
     *
     * @param albedo the planet's, by wavelength in nanometres
     * @param transmission of the air, the same
     */
    public Spectrum from(DoubleUnaryOperator albedo, DoubleUnaryOperator transmission) {
        return coloured
                ? new Spectrum(
                        nm -> weight.applyAsDouble(nm) * albedo.applyAsDouble(nm) * transmission.applyAsDouble(nm),
                        List.of(),
                        false)
                : this;
    }

    /**
     * The spectrum times an exponential.
     *
     * @param passband within which it grows from the middle to the long-wave edge
     * @param tilt natural logarithm of by how much
     */
    public Spectrum tilted(Passband passband, double tilt) {
        double middle = passband.effectiveNm();
        double half = passband.toNm() - middle;
        return tilt == 0
                ? this
                : new Spectrum(
                        nm -> weight.applyAsDouble(nm) * Math.exp(tilt * (nm - middle) / half), List.of(), false);
    }

    /** The camera's response that it was made from; empty if it was not made from one. */
    public List<Point> curve() {
        return curve;
    }

    @Override
    public boolean equals(Object other) {
        return this == other || (other instanceof Spectrum s && !curve.isEmpty() && curve.equals(s.curve));
    }

    @Override
    public int hashCode() {
        return curve.isEmpty() ? System.identityHashCode(this) : curve.hashCode();
    }

    /**
     * A point of a response curve.
     *
     * @param wavelengthNm nanometres
     * @param response quantum efficiency or transmission, any unit, 0 or more
     */
    public record Point(double wavelengthNm, double response) {}

    /**
     * Sunlight from a planet through the air as a camera responds to it; between points linear, beyond the ends as at the ends.
     *
     * @param curve at least two points by growing wavelength
     * @throws IllegalArgumentException if wavelengths do not grow, a response is negative, or all are zero
     */
    public static Spectrum seenBy(List<Point> curve) {
        if (curve.size() < 2) {
            throw new IllegalArgumentException(Message.text("response.fewPoints"));
        }
        for (int i = 0; i < curve.size(); i++) {
            Point p = curve.get(i);
            if (!(p.wavelengthNm > 0 && p.response >= 0 && p.response < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException(Message.text("response.ranges", p.wavelengthNm, p.response));
            }
            if (i > 0 && !(p.wavelengthNm > curve.get(i - 1).wavelengthNm)) {
                throw new IllegalArgumentException(
                        Message.text("response.order", p.wavelengthNm, curve.get(i - 1).wavelengthNm));
            }
        }
        if (curve.stream().allMatch(p -> p.response == 0)) {
            throw new IllegalArgumentException(Message.text("response.zero"));
        }
        return new Spectrum(responded(curve), curve, true);
    }

    private static DoubleUnaryOperator responded(List<Point> curve) {
        double first = curve.get(0).wavelengthNm;
        double last = curve.get(curve.size() - 1).wavelengthNm;
        PolynomialSplineFunction line = new LinearInterpolator()
                .interpolate(
                        curve.stream().mapToDouble(Point::wavelengthNm).toArray(),
                        curve.stream().mapToDouble(Point::response).toArray());
        return nm -> SolarSpectrum.photons(nm) * line.value(Math.max(first, Math.min(last, nm)));
    }

    /**
     * Wavelengths that stand for equal parts of a passband's light: each the middle of its part.
     *
     * @param count how many
     */
    public double[] samplesNm(Passband passband, int count) {
        double width = passband.toNm() - passband.fromNm();
        double[] samples = new double[count];
        if (equals(EVEN)) {
            for (int i = 0; i < count; i++) {
                samples[i] = passband.fromNm() + (i + 0.5) / count * width;
            }
            return samples;
        }
        double[] sum = new double[STEPS + 1];
        double most = 0;
        for (int i = 0; i < STEPS; i++) {
            most = Math.max(most, weight(passband, i));
        }
        for (int i = 0; i < STEPS; i++) {
            // A trace of light everywhere keeps the parts well defined where the camera sees nothing.
            sum[i + 1] = sum[i] + weight(passband, i) + FAINTEST * Math.max(most, Double.MIN_NORMAL);
        }
        int step = 0;
        for (int i = 0; i < count; i++) {
            double wanted = (i + 0.5) / count * sum[STEPS];
            while (sum[step + 1] < wanted) {
                step++;
            }
            double part = (wanted - sum[step]) / (sum[step + 1] - sum[step]);
            samples[i] = passband.fromNm() + (step + part) / STEPS * width;
        }
        return samples;
    }

    private double weight(Passband passband, int step) {
        return weight.applyAsDouble(passband.fromNm() + (step + 0.5) / STEPS * (passband.toNm() - passband.fromNm()));
    }

    /** Mean wavelength of a passband's light, nm. */
    public double effectiveNm(Passband passband) {
        if (equals(EVEN)) {
            return passband.effectiveNm();
        }
        double sum = 0;
        for (double nm : samplesNm(passband, STEPS)) {
            sum += nm;
        }
        return sum / STEPS;
    }
}

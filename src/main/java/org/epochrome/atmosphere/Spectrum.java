package org.epochrome.atmosphere;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.interpolation.LinearInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;
import org.epochrome.image.Passband;

/**
 * How strongly each wavelength counts in a recording: reflected sunlight times what the camera makes of it. Only the course
 * within a passband matters, not the level.
 */
public final class Spectrum {
    /** Every wavelength counts alike: where neither sunlight nor the camera's response is to be reckoned with. */
    public static final Spectrum EVEN = new Spectrum(nm -> 1, List.of());

    /** Photons of sunlight: a black body of the Sun's nominal effective temperature. */
    public static final Spectrum SUNLIGHT = new Spectrum(Spectrum::sunPhotons, List.of());

    /** IAU 2015 resolution B3 (Prsa et al. 2016, Astron. J. 152, 41). */
    private static final double SUN_K = 5772;

    /** h c / k, nm K (CODATA 2018). */
    private static final double SECOND_RADIATION_CONSTANT = 1.438776877e7;

    private static final int STEPS = 256;
    private static final double FAINTEST = 1e-6;

    private final DoubleUnaryOperator weight;
    private final List<Point> curve;

    private Spectrum(DoubleUnaryOperator weight, List<Point> curve) {
        this.weight = weight;
        this.curve = List.copyOf(curve);
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
     * Sunlight as a camera responds to it; between points linear, beyond the ends as at the ends.
     *
     * @param curve at least two points by growing wavelength
     * @throws IllegalArgumentException if wavelengths do not grow, a response is negative, or all are zero
     */
    public static Spectrum seenBy(List<Point> curve) {
        if (curve.size() < 2) {
            throw new IllegalArgumentException("a response curve needs two points or more");
        }
        for (int i = 0; i < curve.size(); i++) {
            Point p = curve.get(i);
            if (!(p.wavelengthNm > 0 && p.response >= 0 && p.response < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("wavelengths are above 0 nm and responses 0 or more, unlike "
                        + p.wavelengthNm + " and " + p.response);
            }
            if (i > 0 && !(p.wavelengthNm > curve.get(i - 1).wavelengthNm)) {
                throw new IllegalArgumentException("wavelengths must grow from row to row, but " + p.wavelengthNm
                        + " follows " + curve.get(i - 1).wavelengthNm);
            }
        }
        if (curve.stream().allMatch(p -> p.response == 0)) {
            throw new IllegalArgumentException("a response curve cannot be zero throughout");
        }
        double first = curve.get(0).wavelengthNm;
        double last = curve.get(curve.size() - 1).wavelengthNm;
        PolynomialSplineFunction line = new LinearInterpolator()
                .interpolate(
                        curve.stream().mapToDouble(Point::wavelengthNm).toArray(),
                        curve.stream().mapToDouble(Point::response).toArray());
        return new Spectrum(nm -> sunPhotons(nm) * line.value(Math.max(first, Math.min(last, nm))), curve);
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

    private static double sunPhotons(double nm) {
        return 1e10 / (Math.pow(nm, 4) * Math.expm1(SECOND_RADIATION_CONSTANT / (nm * SUN_K)));
    }
}

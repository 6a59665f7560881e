package org.epochrome.demo.scene;

/**
 * The noise of a stack, Gaussian per pixel: photons and readout.
 *
 * @param peakSnr signal to noise at full scale if photons alone made it; infinite for no noise at all
 * @param readFraction readout noise, as a fraction of the photon noise at full scale
 * @param seed same seed, same noise
 */
public record Noise(double peakSnr, double readFraction, long seed) {
    public static final Noise NONE = new Noise(Double.POSITIVE_INFINITY, 0, 0);

    public Noise {
        if (!(peakSnr > 0) || !(readFraction >= 0)) {
            throw new IllegalArgumentException(
                    "No such noise: peak signal to noise " + peakSnr + ", readout fraction " + readFraction + ".");
        }
    }

    /** This kind of noise with another seed. */
    public Noise reseeded(long otherSeed) {
        return new Noise(peakSnr, readFraction, otherSeed);
    }

    /** Standard deviation at a level, background not counted; full scale is 1. */
    public double sigma(double level) {
        return Math.sqrt(Math.max(0, level) + readFraction * readFraction) / peakSnr;
    }
}

package org.epochrome.demo;

/**
 * The noise of a stack, Gaussian per pixel: photons and readout.
 *
 * @param peakSnr signal to noise at brightness 1 if photons alone made it; infinite for no noise at all
 * @param readFraction readout noise, as a fraction of the photon noise at brightness 1
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

    /** The same kind of noise, thrown anew. */
    public Noise reseeded(long otherSeed) {
        return new Noise(peakSnr, readFraction, otherSeed);
    }

    /** Standard deviation at a brightness, in units of brightness. */
    public double sigma(double brightness) {
        return Math.sqrt(Math.max(0, brightness) + readFraction * readFraction) / peakSnr;
    }
}

package org.epochrome.disk;

import java.util.Arrays;
import org.epochrome.image.Plane;
import org.epochrome.image.Roughness;

/**
 * Noise of the disk against that of the sky. In linear light the disk's own photons make it the noisier one; a curve that spreads
 * the dark levels makes the sky's noise as strong or stronger.
 */
public final class NoiseRatio {
    /** Parts of the radius within which the disk and beyond which the sky is looked at, and the same beyond rings. */
    private static final double DISK = 0.75;

    private static final double SKY = 1.3;
    private static final double SKY_BEYOND_RINGS = Rings.OUTER + 0.3;
    /** Part of the even globe's brightness from which a pixel lies on the lit disk. */
    private static final double LIT = 0.4;

    private static final int LEAST_PIXELS = 300;

    private NoiseRatio() {}

    /**
     * The scatter of neighbouring pixels on the lit disk over that in the sky, by the median of their
     * {@link Roughness}; the disk's detail makes it larger.
     *
     * @param frame as it was fitted
     * @param globe aspect of the body
     * @return NaN where too little of disk or sky is seen
     */
    public static double ofDiskToSky(Plane frame, Globe globe, FittedDisk fit) {
        View view = new View(globe, fit.disk());
        double sky = globe.ringed() ? SKY_BEYOND_RINGS : SKY;
        double[] onDisk = new double[frame.data().length];
        double[] inSky = new double[frame.data().length];
        int disks = 0;
        int skies = 0;
        for (int y = 1; y < frame.height() - 1; y++) {
            for (int x = 1; x < frame.width() - 1; x++) {
                double part = view.ellipticRadius(view.pole(x, y), view.side(x, y));
                boolean lit = part < DISK && frame.at(x, y) - fit.background() > LIT * fit.brightness();
                if (!lit && part < sky) {
                    continue;
                }
                double rough = Math.abs(Roughness.at(frame, x, y));
                if (Double.isNaN(rough) || rough == 0) { // zero in borders and where the sky was cut off
                    continue;
                }
                if (lit) {
                    onDisk[disks++] = rough;
                } else {
                    inSky[skies++] = rough;
                }
            }
        }
        return Math.min(disks, skies) < LEAST_PIXELS ? Double.NaN : median(onDisk, disks) / median(inSky, skies);
    }

    private static double median(double[] values, int count) {
        double[] sorted = Arrays.copyOf(values, count);
        Arrays.sort(sorted);
        return sorted[count / 2];
    }
}

package org.epochrome.session;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.epochrome.disk.EdgeSpread;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.NoiseRatio;
import org.epochrome.image.Plane;

/** Whether frames look as if they had been processed before: sharpened, or encoded for a screen. */
final class ProcessingCheck {
    /**
     * Depth of the dark seam that sharpening leaves in the sky along the limb, as a part of the disk's brightness, from which a frame
     * looks sharpened. Sharpened scenes have 0.013 to 0.10; scenes that are not have 0.0001 at most, Hubble frames none.
     */
    private static final double SEAM = 0.01;

    /**
     * Noise of the disk over that of the sky, below which a bright sky looks encoded. Linear scenes have 4.6 and more and Hubble
     * frames 13 and more, scenes of gamma 2.2 have 0.9 to 1.4.
     */
    private static final double EVEN_NOISE = 1.5;
    /** Brightness of such a sky, as a part of the disk's: a pedestal of 0.02 is encoded as 0.17. Linear scenes have at most 0.11. */
    private static final double BRIGHT_SKY = 0.15;

    /**
     * Error of the centre on frames that were sharpened, in blurs: no spread function of light makes such a limb. Rendered scenes have 0.03 to
     * 0.07.
     */
    private static final double SHARPENED_DOUBT = 0.1;
    /** The same on encoded frames, whose limb follows no law; rendered scenes have 0.02 to 0.1, and detail that errs by more. */
    private static final double ENCODED_DOUBT = 0.05;

    private final List<String> sharpened = new ArrayList<>();
    private final List<String> encoded = new ArrayList<>();
    private double deepest;
    private int looked;

    /**
     * Looks at a frame.
     *
     * @param name of its file
     * @param linear whether it counts as linear because nothing else was said of it
     * @param plane its pixels
     * @param globe aspect of the body
     * @param fit its disk
     * @return the disk, whose centre is doubted if the frame looks processed and the disk was fitted
     */
    FittedDisk look(String name, boolean linear, Plane plane, Globe globe, FittedDisk fit) {
        looked++;
        if (linear && looksEncoded(plane, globe, fit)) {
            add(encoded, name);
            return doubted(
                    fit, ENCODED_DOUBT); // what is fitted to a frame that is not linear tells nothing of its sharpness
        }
        double seam = EdgeSpread.undershoot(fit.shading());
        if (seam > SEAM) {
            add(sharpened, name);
            deepest = Math.max(deepest, seam);
            return doubted(fit, SHARPENED_DOUBT);
        }
        return fit;
    }

    private static FittedDisk doubted(FittedDisk fit, double blurs) {
        return fit.centreSigmaPx() > 0 ? fit.doubted(blurs * fit.shading().blurPx()) : fit;
    }

    private static boolean looksEncoded(Plane plane, Globe globe, FittedDisk fit) {
        return fit.background() > BRIGHT_SKY * fit.brightness()
                && NoiseRatio.ofDiskToSky(plane, globe, fit) < EVEN_NOISE;
    }

    private static void add(List<String> names, String name) {
        if (!names.contains(name)) { // a colour frame has three planes
            names.add(name);
        }
    }

    /** What the user should know. */
    List<String> warnings() {
        List<String> warnings = new ArrayList<>();
        if (!encoded.isEmpty()) {
            warnings.add(String.format(
                    Locale.ROOT,
                    "%s may be encoded for a screen (the sky is bright and as noisy as the disk); if so, use --encoding srgb or"
                            + " --encoding gamma=2.2.",
                    names(encoded)));
        }
        if (!sharpened.isEmpty()) {
            warnings.add(String.format(
                    Locale.ROOT,
                    "%s %s been sharpened (the sky along the limb is too dark by up to %.0f %% of the disk); use stacks that"
                            + " were not, and sharpen the result with --detail.",
                    names(sharpened),
                    sharpened.size() == 1 ? "has" : "have",
                    100 * deepest));
        }
        return warnings;
    }

    private String names(List<String> names) {
        return names.size() == looked && looked > 1 ? "All frames" : String.join(", ", names);
    }
}

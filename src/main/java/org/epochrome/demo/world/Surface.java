package org.epochrome.demo.world;

import org.epochrome.ephemeris.Body;
import org.epochrome.image.Band;
import org.epochrome.image.Passband;

/**
 * What is painted on a globe: albedo maps in red, green and blue, from which every other band is mixed.
 *
 * @param red for the band R
 * @param green for the band G
 * @param blue for the band B
 */
public record Surface(AlbedoMap red, AlbedoMap green, AlbedoMap blue) {
    private static final int MIXING_STEPS = 32;

    /** A surface with one map for every band. */
    public static Surface grey(AlbedoMap map) {
        return new Surface(map, map, map);
    }

    /** An invented surface in the manner of a planet; same seed, same surface. */
    public static Surface invented(Body body, long seed) {
        return switch (body) {
            case JUPITER -> BandedWorld.surface(seed);
            case MARS -> DustyWorld.surface(seed);
            default -> QuietWorld.surface(body, seed);
        };
    }

    /**
     * The albedo in a band. Bands other than R, G and B see the mean over their passband of the three maps,
     * interpolated between the middles of the usual passbands and constant beyond them.
     */
    public AlbedoMap albedo(Band band) {
        return switch (band.name()) {
            case "R" -> red;
            case "G" -> green;
            case "B" -> blue;
            default -> mixed(band.passband());
        };
    }

    private AlbedoMap mixed(Passband passband) {
        double blueNm = Band.B.passband().effectiveNm();
        double greenNm = Band.G.passband().effectiveNm();
        double redNm = Band.R.passband().effectiveNm();
        double ofRed = 0;
        double ofBlue = 0;
        for (int i = 0; i < MIXING_STEPS; i++) {
            double nm = passband.fromNm() + (passband.toNm() - passband.fromNm()) * (i + 0.5) / MIXING_STEPS;
            ofRed += Math.min(1, Math.max(0, (nm - greenNm) / (redNm - greenNm))) / MIXING_STEPS;
            ofBlue += Math.min(1, Math.max(0, (greenNm - nm) / (greenNm - blueNm))) / MIXING_STEPS;
        }
        AlbedoMap redAndGreen = red.mixed(ofRed, green, 1 - ofRed - ofBlue);
        return redAndGreen.mixed(1, blue, ofBlue);
    }
}

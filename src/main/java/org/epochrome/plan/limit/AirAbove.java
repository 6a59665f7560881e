package org.epochrome.plan.limit;

import java.util.List;
import org.epochrome.atmosphere.Air;
import org.epochrome.atmosphere.AirMass;
import org.epochrome.atmosphere.Dispersion;
import org.epochrome.atmosphere.Extinction;
import org.epochrome.atmosphere.Refraction;
import org.epochrome.atmosphere.Spectrum;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Band;

/**
 * What the air does to the bands of a planet: shift and smear by dispersion against the resolution.
 *
 * @param body whose albedo weighs the wavelengths within a band
 * @param air at the site
 * @param resolution of the telescope in the seeing
 */
public record AirAbove(Body body, Air air, Resolution resolution) {
    /** The altitude below which refraction is not modelled. */
    public static final double LOWEST_DEG = Refraction.LOWEST_ALTITUDE_DEG;

    private static final int HALVINGS = 40;

    /**
     * Shift and smear of bands.
     *
     * @param altitudeDeg without refraction, 5 to 90
     */
    public List<BandDispersion> at(double altitudeDeg, List<Band> bands) {
        double airMass = AirMass.at(altitudeDeg);
        Spectrum light =
                Spectrum.CAMERA.from(nm -> body.albedo().at(nm), nm -> Extinction.transmission(nm, airMass, air));
        Dispersion dispersion = new Dispersion(light.effectiveNm(Band.G.passband()), altitudeDeg, air);
        return bands.stream()
                .map(band -> new BandDispersion(
                        band,
                        dispersion.shiftArcsec(band.passband(), light),
                        dispersion.smearArcsec(band.passband()),
                        resolution.arcsec(band.passband().effectiveNm(), airMass)))
                .toList();
    }

    /**
     * What a corrector must bring together: distance between the shortest and the longest wavelength of the bands.
     *
     * @param altitudeDeg without refraction, 5 to 90
     */
    public double spreadArcsec(double altitudeDeg, List<Band> bands) {
        double shortest =
                bands.stream().mapToDouble(b -> b.passband().fromNm()).min().orElseThrow();
        double longest =
                bands.stream().mapToDouble(b -> b.passband().toNm()).max().orElseThrow();
        return new Dispersion(longest, altitudeDeg, air).shiftArcsec(shortest);
    }

    /**
     * The altitude in degrees from which the smear within a band is no longer than the resolution at the zenith; 5 if it is so
     * everywhere.
     */
    public double lowestAltitudeDeg(Band band) {
        double low = LOWEST_DEG;
        double high = 90;
        if (!exceeds(band, low)) {
            return low;
        }
        for (int i = 0; i < HALVINGS; i++) {
            double middle = 0.5 * (low + high);
            if (exceeds(band, middle)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    private boolean exceeds(Band band, double altitudeDeg) {
        double smear = new Dispersion(band.passband().effectiveNm(), altitudeDeg, air).smearArcsec(band.passband());
        return smear > resolution.arcsec(band.passband().effectiveNm(), 1);
    }
}

package org.epochrome.plan.limit;

import org.epochrome.text.Message;

/**
 * A telescope with its camera.
 *
 * @param apertureMm diameter of the aperture, 20 to 20000
 * @param obstruction diameter of the central obstruction as a part of the aperture, 0 to 0.9
 * @param focalLengthMm with all lenses in the light path, 50 to 500000
 * @param pixelUm side of a pixel of the recordings in micrometres (with binning that of the bins), 0.5 to 100
 */
public record Telescope(double apertureMm, double obstruction, double focalLengthMm, double pixelUm) {
    private static final double ARCSEC_PER_RAD = Math.toDegrees(3600);

    public Telescope {
        if (!(apertureMm >= 20 && apertureMm <= 20_000)) {
            throw new IllegalArgumentException(Message.text("value.aperture", apertureMm));
        }
        if (!(obstruction >= 0 && obstruction <= 0.9)) {
            throw new IllegalArgumentException(Message.text("value.obstruction", obstruction));
        }
        if (!(focalLengthMm >= 50 && focalLengthMm <= 500_000)) {
            throw new IllegalArgumentException(Message.text("value.focalLength", focalLengthMm));
        }
        if (!(pixelUm >= 0.5 && pixelUm <= 100)) {
            throw new IllegalArgumentException(Message.text("value.pixelSize", pixelUm));
        }
    }

    /** Plate scale. */
    public double arcsecPerPx() {
        return ARCSEC_PER_RAD * pixelUm / 1000 / focalLengthMm;
    }

    /** Focal length over aperture. */
    public double fRatio() {
        return focalLengthMm / apertureMm;
    }

    /** Wavelength over aperture, the unit of diffraction, arcsec. */
    double diffractionUnitArcsec(double wavelengthNm) {
        return ARCSEC_PER_RAD * wavelengthNm * 1e-6 / apertureMm;
    }
}

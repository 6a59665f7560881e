package org.epochrome.ephemeris.body;

/**
 * How much of the sunlight the whole disk of a planet throws back at full phase, by wavelength: geometric albedos in some
 * bands, straight lines in between.
 */
public final class Albedo {
    private final double[] nm;
    private final double[] geometric;

    /**
     * @param nm effective wavelengths of two or more bands, growing
     * @param geometric albedos in these bands
     */
    Albedo(double[] nm, double[] geometric) {
        this.nm = nm.clone();
        this.geometric = geometric.clone();
    }

    static Albedo of(FactsFile file) {
        double[] nm = file.numbers("albedo.nm");
        double[] geometric = file.numbers("albedo.geometric");
        for (int i = 1; i < nm.length; i++) {
            if (!(nm[i] > nm[i - 1])) {
                throw file.malformed("albedo.nm", "the wavelengths do not grow");
            }
        }
        if (nm.length < 2 || nm.length != geometric.length) {
            throw file.malformed(
                    "albedo.geometric", geometric.length + " albedos do not go with " + nm.length + " wavelengths");
        }
        return new Albedo(nm, geometric);
    }

    /** Geometric albedo at a wavelength, in nanometres; beyond the first and last band that of the band. */
    public double at(double wavelengthNm) {
        int i = 1;
        while (i < nm.length - 1 && wavelengthNm > nm[i]) {
            i++;
        }
        double part = Math.max(0, Math.min(1, (wavelengthNm - nm[i - 1]) / (nm[i] - nm[i - 1])));
        return geometric[i - 1] + part * (geometric[i] - geometric[i - 1]);
    }
}

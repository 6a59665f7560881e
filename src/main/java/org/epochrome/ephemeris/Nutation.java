package org.epochrome.ephemeris;

/**
 * Nutation: the leading terms of IAU 2000B (McCarthy &amp; Luzum 2003, Celest. Mech. Dyn. Astron. 85, 37), those above
 * about 0.8 milliarcseconds. Within 0.005 arcsec of IAU 2000A from 1950 to 2100.
 *
 * @param longitudeRad delta psi
 * @param obliquityRad delta epsilon
 * @param equationOfEquinoxesTermsRad the complementary terms of the equation of the equinoxes (the two largest, IERS
 *     Conventions 2010, section 5.5.7)
 */
record Nutation(double longitudeRad, double obliquityRad, double equationOfEquinoxesTermsRad) {
    private static final double ARCSEC = Math.toRadians(1.0 / 3600.0);
    private static final double TENTH_MICROARCSEC = 1e-7 * ARCSEC;

    /** What the planets add on average, arcsec: IAU 2000B's offsets. */
    private static final double PLANETARY_LONGITUDE_ARCSEC = -0.000135;

    private static final double PLANETARY_OBLIQUITY_ARCSEC = 0.000388;

    /** Constant (arcsec) and rate (arcsec a Julian century) of l, l', F, D and Omega; Simon et al. 1994. */
    private static final double[][] ARGUMENTS = {
        {485868.249036, 1717915923.2178},
        {1287104.79305, 129596581.0481},
        {335779.526232, 1739527262.8478},
        {1072260.70369, 1602961601.2090},
        {450160.398036, -6962890.5431}
    };

    /**
     * Multiples of l, l', F, D, Omega; then for delta psi the sine, its change a century and the cosine, for delta
     * epsilon the cosine, its change a century and the sine; all in 0.1 microarcsec.
     */
    private static final double[][] TERMS = {
        {0, 0, 0, 0, 1, -172064161, -174666, 33386, 92052331, 9086, 15377},
        {0, 0, 2, -2, 2, -13170906, -1675, -13696, 5730336, -3015, -4587},
        {0, 0, 2, 0, 2, -2276413, -234, 2796, 978459, -485, 1374},
        {0, 0, 0, 0, 2, 2074554, 207, -698, -897492, 470, -291},
        {0, 1, 0, 0, 0, 1475877, -3633, 11817, 73871, -184, -1924},
        {0, 1, 2, -2, 2, -516821, 1226, -524, 224386, -677, -174},
        {1, 0, 0, 0, 0, 711159, 73, -872, -6750, 0, 358},
        {0, 0, 2, 0, 1, -387298, -367, 380, 200728, 18, 318},
        {1, 0, 2, 0, 2, -301461, -36, 816, 129025, -63, 367},
        {0, -1, 2, -2, 2, 215829, -494, 111, -95929, 299, 132},
        {0, 0, 2, -2, 1, 128227, 137, 181, -68982, -9, 39},
        {-1, 0, 2, 0, 2, 123457, 11, 19, -53311, 32, -4},
        {-1, 0, 0, 2, 0, 156994, 10, -168, -1235, 0, 82},
        {1, 0, 0, 0, 1, 63110, 63, 27, -33228, 0, -9},
        {-1, 0, 0, 0, 1, -57976, -63, -189, 31429, 0, -75},
        {-1, 0, 2, 2, 2, -59641, -11, 149, 25543, -11, 66},
        {1, 0, 2, 0, 1, -51613, -42, 129, 26366, 0, 78},
        {-2, 0, 2, 0, 1, 45893, 50, 31, -24236, -10, 20},
        {0, 0, 0, 2, 0, 63384, 11, -150, -1220, 0, 29},
        {0, 0, 2, 2, 2, -38571, -1, 158, 16452, -11, 68},
        {0, -2, 2, -2, 2, 32481, 0, 0, -13870, 0, 0},
        {-2, 0, 0, 2, 0, -47722, 0, -18, 477, 0, -25},
        {2, 0, 2, 0, 2, -31046, -1, 131, 13238, -11, 59},
        {1, 0, 2, -2, 2, 28593, 0, -1, -12338, 10, -3},
        {-1, 0, 2, 0, 1, 20441, 21, 10, -10758, 0, -3},
        {2, 0, 0, 0, 0, 29243, 0, -74, -609, 0, 13},
        {0, 0, 2, 0, 0, 25887, 0, -66, -550, 0, 11},
        {0, 1, 0, 0, 1, -14053, -25, 79, 8551, -2, -45},
        {-1, 0, 0, 2, 1, 15164, 10, 11, -8001, 0, -1},
        {0, 2, 2, -2, 2, -15794, 72, -16, 6850, -42, -5},
        {0, 0, -2, 2, 0, 21783, 0, 13, -167, 0, 13},
        {1, 0, 0, -2, 1, -12873, -10, -37, 6953, 0, -14},
        {0, -1, 0, 0, 1, -12654, 11, 63, 6415, 0, 26},
        {-1, 0, 2, 2, 1, -10204, 0, 25, 5222, 0, 15},
        {0, 2, 0, 0, 0, 16707, -85, -10, 168, -1, 10},
        {1, 0, 2, 2, 2, -7691, 0, 44, 3268, 0, 19},
        {-2, 0, 2, 0, 0, -11024, 0, -14, 104, 0, 2},
    };

    /** At a TT instant, in Julian centuries since J2000.0. */
    static Nutation at(double centuries) {
        double[] arguments = new double[ARGUMENTS.length];
        for (int i = 0; i < arguments.length; i++) {
            arguments[i] = (ARGUMENTS[i][0] + ARGUMENTS[i][1] * centuries) % 1296000.0 * ARCSEC;
        }
        double psi = 0;
        double epsilon = 0;
        for (double[] term : TERMS) {
            double angle = 0;
            for (int i = 0; i < arguments.length; i++) {
                angle += term[i] * arguments[i];
            }
            double sin = Math.sin(angle);
            double cos = Math.cos(angle);
            psi += (term[5] + term[6] * centuries) * sin + term[7] * cos;
            epsilon += (term[8] + term[9] * centuries) * cos + term[10] * sin;
        }
        double node = arguments[4];
        return new Nutation(
                psi * TENTH_MICROARCSEC + PLANETARY_LONGITUDE_ARCSEC * ARCSEC,
                epsilon * TENTH_MICROARCSEC + PLANETARY_OBLIQUITY_ARCSEC * ARCSEC,
                (0.00264096 * Math.sin(node) + 0.00006352 * Math.sin(2 * node)) * ARCSEC);
    }
}

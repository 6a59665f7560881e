package org.epochrome.demo.world;

/**
 * A small dry world in the manner of Mars: ochre deserts, dark lands with ragged coasts, a white cap at each pole, and
 * clouds. All of it is invented.
 *
 * <p>The lands have strong contrast in red and hardly any in blue; the clouds are seen in blue and hardly in red.
 */
final class DustyWorld {
    private static final double[] DESERT = {.340, .185, .082};
    private static final double[] DARK_LAND = {.115, .088, .064};
    private static final double[] ICE = {.46, .34, .19};
    private static final double[] CLOUD = {.010, .036, .062};
    private static final double[] MOTTLE = {.050, .040, .018};
    private static final double[] BASIN = {.16, .17, .12};

    /** Strokes of dark land: latitude, longitude, half width in degrees, at either end. */
    private static final double[][] DARK_STROKES = {
        {-24, 8, 6, -18, 52, 5},
        {-18, 52, 6, -32, 96, 9},
        {-32, 96, 7, -44, 132, 6},
        {-12, 66, 7, 18, 74, 2.5},
        {-20, 60, 8, -8, 70, 7},
        {-28, 150, 7, -20, 196, 4},
        {-20, 196, 5, -9, 214, 2},
        {-46, 170, 6, -52, 230, 5},
        {-30, 236, 8, -38, 262, 9},
        {-38, 262, 6, -22, 300, 6},
        {-22, 300, 7, -16, 342, 4},
        {-16, 342, 5, -6, 356, 3},
        {-50, 290, 5, -56, 350, 5},
        {34, 318, 6, 44, 346, 7},
        {44, 346, 5, 50, 380, 6},
        {52, 60, 4, 57, 120, 5},
        {22, 128, 3, 27, 141, 4},
        {58, 180, 4, 55, 240, 5},
        {-2, 262, 1.6, -7, 292, 2.2},
        {12, 226, 2.2, 17, 233, 1.6},
    };

    /** Round bright basins: latitude, longitude, half height, half width. */
    private static final double[][] BASINS = {
        {-43, 68, 8, 12}, {-48, 318, 6, 9}, {14, 186, 14, 30}, {22, 22, 12, 24}, {30, 276, 12, 26},
    };

    /** Clouds that hang on mountains: latitude, longitude, half height, half width. */
    private static final double[][] MOUNTAIN_CLOUDS = {
        {18, 226, 4, 6}, {-1, 247, 3, 4}, {-9, 239, 3, 4}, {11, 256, 3, 4.5}, {24, 147, 4, 6}, {40, 250, 4, 8},
    };

    private final Flow flow = new Flow();
    private final Field dark = Field.empty();
    private final Field basins = Field.empty();
    private final Field clouds = Field.empty();
    private final Field ragged;
    private final Field mottle;
    private final Field veil;

    private final double firstMeridian;

    private DustyWorld(long seed) {
        Dice dice = new Dice(seed);
        firstMeridian = dice.next(0, 360);
        Field everywhere = Field.byLatitude(latitude -> 1 - StrictMath.pow(Math.abs(latitude) / 90, 4));
        flow.heave(Field.clouds(dice.fork(1), 18, 9, .55), 4, everywhere);
        flow.sway(Field.clouds(dice.fork(2), 18, 9, .55), 6, everywhere);
        ragged = Field.clouds(dice.fork(3), 18, 9, .78);
        mottle = Field.clouds(dice.fork(4), 72, 36, .85);
        veil = Field.clouds(dice.fork(5), 9, 18, .6);
    }

    static Surface surface(long seed) {
        DustyWorld world = new DustyWorld(seed);
        world.layOut();
        return Field.surface(world::paint);
    }

    private void layOut() {
        for (double[] s : DARK_STROKES) {
            double length = Math.sqrt((s[3] - s[0]) * (s[3] - s[0]) + (s[4] - s[1]) * (s[4] - s[1]));
            int dabs = (int) Math.ceil(length / (.6 * Math.min(s[2], s[5]))) + 1;
            for (int i = 0; i < dabs; i++) {
                double t = i / (dabs - 1.0);
                double half = s[2] + t * (s[5] - s[2]);
                double latitude = s[0] + t * (s[3] - s[0]);
                dark.paint(
                        Field.DAB,
                        latitude,
                        firstMeridian + s[1] + t * (s[4] - s[1]),
                        half,
                        1.15 * half,
                        1.0 * length / dabs / half);
            }
        }
        for (double[] b : BASINS) {
            basins.paint(Field.DAB, b[0], firstMeridian + b[1], b[2], b[3], 1);
            dark.paint(Field.DAB, b[0], firstMeridian + b[1], b[2], b[3], -.8);
        }
        for (double[] c : MOUNTAIN_CLOUDS) {
            clouds.paint(Field.DAB, c[0], firstMeridian + c[1], c[2], c[3], .9);
        }
    }

    private void paint(int row, int column, double[] albedo) {
        double latitude = Field.latitudeDeg(row) + flow.north(row, column);
        double longitude = Field.longitudeDeg(column) + flow.east(row, column);
        double coast = ragged.at(row, column);
        double grain = mottle.at(row, column);
        double shore = Math.min(1.3, dark.at(latitude, longitude)) + .21 * coast + .03 * grain;
        double land = .60 * step(.45, .72, shore) + .40 * step(.65, 1.45, shore + .10 * coast);
        land = Math.max(land, .30 * step(.15, .5, shore)); // half-tones around the lands
        double bright = basins.at(latitude, longitude) - .45 * coast;
        double north = Field.latitudeDeg(row);
        double edge = 1.1 * coast;
        double ice = step(73, 76, north + edge) + step(75, 78, edge - north);
        double thin = veil.at(latitude, longitude);
        double hood = step(52, 68, north + 4 * thin) * (.75 + .25 * thin);
        double belt = step(24, 6, Math.abs(north - 6 + 4 * thin)) * step(-.2, 1.8, thin);
        double cover = Math.min(1.2, Math.max(0, clouds.at(latitude, longitude) + .9 * hood + .8 * belt));
        for (int band = 0; band < albedo.length; band++) {
            double ground = DESERT[band] * (1 + BASIN[band] * bright);
            ground += (DARK_LAND[band] * (1 - MOTTLE[band] * coast) - ground) * land;
            ground *= 1 + MOTTLE[band] * grain;
            double whitened = ground + (ICE[band] - ground) * Math.min(1, ice);
            albedo[band] = whitened + CLOUD[band] * cover;
        }
    }

    /** Rises smoothly from 0 at one value to 1 at another. */
    private static double step(double from, double to, double value) {
        double t = Math.min(1, Math.max(0, (value - from) / (to - from)));
        return t * t * (3 - 2 * t);
    }
}

package org.epochrome.demo.world;

/**
 * A giant with belts and zones, in the manner of Jupiter: turbulent edges, plumes that hang from a belt into the
 * equatorial zone, one great reddish oval with a wake, strings of small ovals. All of it is invented.
 *
 * <p>Contrast differs from band to band: the oval is bright in red and dark in blue, the plumes are dark in red and
 * hardly seen in blue, and the finest mottling has its contrast reversed between red and blue.
 */
final class BandedWorld {
    /** Latitude, red, green, blue albedo, activity. */
    private static final double[][] STRIPES = {
        {-90, .42, .37, .31, .5},
        {-70, .46, .40, .33, .8},
        {-55, .55, .47, .38, 1.0},
        {-49, .60, .52, .42, 1.0},
        {-46, .72, .65, .55, .7},
        {-42.5, .73, .65, .55, .7},
        {-41.2, .60, .50, .40, .9},
        {-38.2, .60, .51, .41, .9},
        {-36.5, .76, .69, .58, .7},
        {-33, .77, .70, .59, .8},
        {-31.6, .63, .50, .38, .9},
        {-28.2, .60, .48, .36, .9},
        {-26.4, .81, .74, .62, .4},
        {-21.6, .81, .73, .60, .5},
        {-20.2, .55, .36, .23, 1.1},
        {-16, .59, .41, .27, 1.2},
        {-14.6, .68, .54, .40, 1.2},
        {-12.6, .67, .52, .38, 1.2},
        {-11.2, .54, .37, .24, 1.1},
        {-7.8, .53, .36, .24, 1.0},
        {-6.2, .80, .74, .62, .5},
        {-2.4, .83, .77, .65, .4},
        {-1.2, .74, .66, .54, .5},
        {.2, .74, .66, .54, .5},
        {1.6, .83, .77, .66, .4},
        {6.0, .80, .75, .65, .6},
        {7.6, .55, .37, .24, 1.1},
        {12, .50, .31, .19, 1.2},
        {16.4, .55, .36, .22, 1.0},
        {18.2, .79, .72, .61, .5},
        {23.4, .80, .73, .62, .4},
        {24.8, .64, .51, .38, .8},
        {27.6, .63, .50, .37, .8},
        {29.2, .76, .70, .59, .6},
        {34.4, .74, .68, .58, .6},
        {36, .62, .53, .43, .8},
        {38.6, .62, .53, .43, .8},
        {40.6, .71, .65, .57, .7},
        {45, .63, .55, .45, 1.0},
        {55, .55, .48, .39, 1.0},
        {70, .46, .41, .35, .8},
        {90, .42, .38, .33, .5},
    };

    private static final double OVAL_LATITUDE = -22.3;
    private static final double OVAL_HALF_HEIGHT = 5.4;
    private static final double OVAL_HALF_WIDTH = 8.6;

    /** Effect per unit of a paint on red, green and blue. */
    private enum Paint {
        STREAK(.075, .105, .125),
        MOTTLE(.040, .022, -.034),
        PLUME(-.44, -.32, -.15),
        BRIGHT(.17, .24, .30),
        DARK(-.28, -.46, -.55),
        RIM(-.13, -.17, -.15);

        private final double[] effect;

        Paint(double red, double green, double blue) {
            this.effect = new double[] {red, green, blue};
        }
    }

    private static final double[] OVAL_COLOUR = {.80, .35, .14};

    private final Palette palette = new Palette(STRIPES);
    private final Dice dice;
    private final double ovalLongitude;
    private final Flow flow = new Flow();
    private final Field streaks;
    private final Field mottle;
    private final Field plumes = Field.empty();
    private final Field bright = Field.empty();
    private final Field dark = Field.empty();
    private final Field rims = Field.empty();
    private final Field oval = Field.empty();

    private BandedWorld(long seed) {
        this.dice = new Dice(seed);
        this.ovalLongitude = dice.next(0, 360);
        this.streaks = Field.clouds(dice.fork(1), 18, 72, .70);
        this.mottle = Field.clouds(dice.fork(2), 144, 144, .95);
    }

    static Surface surface(long seed) {
        BandedWorld world = new BandedWorld(seed);
        world.stirUp();
        world.hangPlumes();
        world.placeSpots();
        world.placeOval();
        return Field.surface(world::paint);
    }

    private void stirUp() {
        Field activity = Field.byLatitude(lat -> palette.activity(lat) * (1 - StrictMath.pow(Math.abs(lat) / 90, 6)));
        for (int i = 1; i <= 4; i++) {
            activity.paint(Field.DAB, OVAL_LATITUDE + 8.5, ovalLongitude - 4 - 11 * i, 4, 11, .9); // the wake, westward
        }
        flow.heave(Field.clouds(dice.fork(3), 36, 36, .5), .7, activity);
        flow.stir(Field.clouds(dice.fork(4), 72, 72, .25), 7, activity);
        flow.stir(Field.clouds(dice.fork(5), 288, 288, .3), 1.3, activity);
    }

    private void hangPlumes() {
        int count = 12;
        for (int i = 0; i < count; i++) {
            double longitude = (i + dice.next(-.3, .3)) * 360 / count;
            double size = dice.next(.7, 1.3);
            plumes.paint(Field.DAB, 7.2, longitude, 1.3 * size, 4.2 * size, 1.1);
            int steps = 28;
            for (int k = 0; k < steps; k++) {
                double t = (k + .5) / steps;
                double fade = (1 - t) * .5;
                double hook = longitude - 15 * size * StrictMath.pow(t, 1.5);
                plumes.paint(Field.DAB, 6.8 - 6.3 * t * (1.6 - .6 * t), hook, .75, 1.4, .75 * fade * size);
            }
            bright.paint(Field.DAB, 4.6, longitude + 8 * size, 1.5, 4.2, .55);
        }
    }

    private void placeSpots() {
        for (int i = 0; i < 9; i++) { // a string of white ovals
            spot(bright, -33.6 + dice.next(-.5, .5), i * 40 + dice.next(-13, 13), dice.next(1.1, 1.6), 1);
        }
        double[] spotLatitudes = {-44.5, -39.5, 20.8, 33, 41.5, -49};
        for (int i = 0; i < 26; i++) {
            double latitude = spotLatitudes[i % spotLatitudes.length] + dice.next(-.8, .8);
            spot(i % 3 == 2 ? dark : bright, latitude, dice.next(0, 360), dice.next(.5, 1.0), .8);
        }
        for (int i = 0; i < 7; i++) { // dark bars at the north edge of the north equatorial belt
            dark.paint(Field.SPOT, 15.4 + dice.next(-.5, .8), dice.next(0, 360), .9, dice.next(2, 3.4), .8);
        }
        for (int i = 0; i < 6; i++) { // rifts in the north equatorial belt
            double longitude = dice.next(0, 360);
            for (int k = 0; k < 26; k++) {
                double latitude = 9.4 + .17 * k + dice.next(-.7, .7);
                bright.paint(Field.DAB, latitude, longitude + 1.5 * k, .6, 1.5, dice.next(.4, 1.1));
            }
        }
    }

    private void spot(Field paint, double latitude, double longitude, double halfHeight, double strength) {
        double halfWidth = 1.35 * halfHeight;
        flow.whirl(latitude, longitude, 1.5 * halfHeight, 1.5 * halfWidth, latitude < 0 ? 200 : -200);
        paint.paint(Field.SPOT, latitude, longitude, halfHeight, halfWidth, strength);
        rims.paint(Field.RIM, latitude, longitude, halfHeight, halfWidth, .8);
    }

    private void placeOval() {
        double height = OVAL_HALF_HEIGHT;
        double width = OVAL_HALF_WIDTH;
        flow.push(Field.SPOT, OVAL_LATITUDE + 4, ovalLongitude, 1.15 * height, 1.5 * width, 4.6);
        flow.whirl(OVAL_LATITUDE, ovalLongitude, .8 * height, .8 * width, 300);
        oval.paint(Field.SPOT, OVAL_LATITUDE, ovalLongitude, height, width, 1);
        rims.paint(Field.RIM, OVAL_LATITUDE, ovalLongitude, .92 * height, .92 * width, 1);
    }

    private void paint(int row, int column, double[] albedo) {
        double latitude = Field.latitudeDeg(row) + flow.north(row, column);
        double longitude = Field.longitudeDeg(column) + flow.east(row, column);
        double nearLatitude = Field.latitudeDeg(row) + .5 * flow.north(row, column);
        double nearLongitude = Field.longitudeDeg(column) + .5 * flow.east(row, column);
        double activity = .45 + .55 * palette.activity(latitude);
        double streak = streaks.at(latitude, longitude);
        double mottling = mottle.at(latitude, longitude);
        double plume = Math.min(1.2, plumes.at(nearLatitude, nearLongitude));
        double brightness = Math.min(1.3, bright.at(nearLatitude, nearLongitude));
        double darkness = Math.min(1.2, dark.at(nearLatitude, nearLongitude));
        double within = oval.at(row, column);
        for (int band = 0; band < albedo.length; band++) {
            double ground = palette.colour(band, latitude + .25 * activity * streak);
            double colour = ground + (OVAL_COLOUR[band] - ground) * within;
            albedo[band] = colour
                    * (1 + Paint.STREAK.effect[band] * activity * streak)
                    * (1 + Paint.MOTTLE.effect[band] * activity * mottling)
                    * (1 + Paint.PLUME.effect[band] * plume)
                    * (1 + Paint.BRIGHT.effect[band] * brightness)
                    * (1 + Paint.DARK.effect[band] * darkness)
                    * (1 + Paint.RIM.effect[band] * rims.at(row, column));
        }
    }
}

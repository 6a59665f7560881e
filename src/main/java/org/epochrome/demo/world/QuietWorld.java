package org.epochrome.demo.world;

import org.epochrome.ephemeris.Body;

/** A world with soft bands, thin streaks and a few faint spots: a plain stand-in for the planets without a painter. */
final class QuietWorld {
    private static final double[] SHADE = {.8, 1, 1.2};

    /**
     * How a world looks.
     *
     * @param red mean albedo in red
     * @param green the same in green
     * @param blue the same in blue
     * @param bands contrast of the bands from latitude to latitude
     * @param streaks contrast of streaks along the bands
     * @param mottle contrast of mottling without direction
     */
    private record Look(double red, double green, double blue, double bands, double streaks, double mottle) {
        static Look of(Body body) {
            return switch (body) {
                case MERCURY -> new Look(.16, .14, .12, 0, 0, .16);
                case VENUS -> new Look(.90, .86, .74, .02, .035, 0);
                case SATURN -> new Look(.78, .68, .47, .10, .025, .008);
                case URANUS -> new Look(.36, .56, .60, .05, .01, 0);
                case NEPTUNE -> new Look(.26, .45, .58, .08, .03, .01);
                default -> new Look(.6, .6, .6, .1, .03, .01);
            };
        }
    }

    private final Look look;
    private final Dice dice;
    private final Palette palette;
    private final Field streaks;
    private final Field mottle;
    private final Field waves;
    private final Field spots = Field.empty();
    /** By row; the cells are thin at the poles. */
    private final double[] calmness = new double[Field.HEIGHT];

    private QuietWorld(Body body, long seed) {
        this.look = Look.of(body);
        this.dice = new Dice(seed);
        this.palette = bands();
        this.streaks = Field.clouds(dice.fork(1), 9, 72, .72);
        this.mottle = Field.clouds(dice.fork(2), 72, 36, .85);
        this.waves = Field.clouds(dice.fork(3), 18, 36, .6);
        for (int row = 0; row < calmness.length; row++) {
            calmness[row] = 1 - StrictMath.pow(Math.abs(Field.latitudeDeg(row)) / 90, 4);
        }
        for (int i = 0; i < 12; i++) {
            double half = dice.next(.8, 2);
            spots.paint(Field.SPOT, dice.next(-60, 60), dice.next(0, 360), half, 1.8 * half, dice.next(-1, 1));
        }
    }

    static Surface surface(Body body, long seed) {
        return Field.surface(new QuietWorld(body, seed)::paint);
    }

    private Palette bands() {
        int count = 27;
        double[][] stripes = new double[count][];
        for (int i = 0; i < count; i++) {
            double latitude = -90 + 180.0 * i / (count - 1);
            double tone = look.bands() * dice.next(-1, 1);
            stripes[i] = new double[] {
                latitude,
                look.red() * (1 + SHADE[0] * tone),
                look.green() * (1 + SHADE[1] * tone),
                look.blue() * (1 + SHADE[2] * tone),
                1
            };
        }
        return new Palette(stripes);
    }

    private void paint(int row, int column, double[] albedo) {
        double latitude = Field.latitudeDeg(row) + .5 * waves.at(row, column);
        double longitude = Field.longitudeDeg(column);
        double calm = calmness[row];
        double streak = streaks.at(latitude, longitude);
        for (int band = 0; band < albedo.length; band++) {
            albedo[band] = palette.colour(band, latitude)
                    * (1 + SHADE[band] * look.streaks() * calm * streak)
                    * (1 + SHADE[band] * look.mottle() * calm * mottle.at(row, column))
                    * (1 + SHADE[band] * 2 * look.streaks() * spots.at(row, column));
        }
    }
}

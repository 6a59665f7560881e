package org.epochrome.colour;

import java.util.Optional;
import org.epochrome.choice.Choice;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Plane;
import org.epochrome.text.Message;

/**
 * How the colours of a picture are balanced.
 *
 * @param white which colour the disk gets
 * @param solar gains that make sunlight white; there if and only if {@code white} is SOLAR
 */
public record WhiteBalance(
        @Choice(key = "balance", option = "white") White white,
        @Choice(key = "gains", option = "white-gains") Optional<Gains> solar) {
    public WhiteBalance {
        if ((white == White.SOLAR) != solar.isPresent()) {
            throw new IllegalArgumentException(Message.text("value.whiteBalance"));
        }
    }

    /** A balance that needs no gains. */
    public static WhiteBalance of(White white) {
        return new WhiteBalance(white, Optional.empty());
    }

    /** Gains measured on a sun-like star or a white target. */
    public static WhiteBalance solar(Gains gains) {
        return new WhiteBalance(White.SOLAR, Optional.of(gains));
    }

    /**
     * The gains for a cube.
     *
     * @param disk 1 inside the disk's lit part, 0 elsewhere: where colour is measured
     */
    public Gains gains(ColourCube cube, Plane disk, Body body) {
        return switch (white) {
            case NONE -> Gains.NONE;
            case SOLAR -> solar.orElseThrow().relativeToGreen();
            case DISK -> towards(new double[] {1, 1, 1}, cube, disk);
            case PHOTOMETRIC -> towards(Sunlit.of(body), cube, disk);
        };
    }

    private static Gains towards(double[] colour, ColourCube cube, Plane disk) {
        return new Gains(
                        colour[0] / mean(cube.red(), cube, disk),
                        colour[1] / mean(cube.green(), cube, disk),
                        colour[2] / mean(cube.blue(), cube, disk))
                .relativeToGreen();
    }

    /** Over what all colours show of the disk; 1 where there is nothing to measure. */
    private static double mean(Plane plane, ColourCube cube, Plane disk) {
        double sum = 0;
        double count = 0;
        for (int i = 0; i < plane.data().length; i++) {
            if (disk.data()[i] > 0 && cube.isWhole(i)) {
                sum += plane.data()[i];
                count++;
            }
        }
        return sum > 0 ? sum / count : 1;
    }
}

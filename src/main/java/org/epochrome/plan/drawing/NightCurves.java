package org.epochrome.plan.drawing;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.epochrome.image.Band;
import org.epochrome.plan.NightPlan;
import org.epochrome.plan.PlannedHour;
import org.epochrome.plan.limit.BandDispersion;

/**
 * The night as curves over time.
 *
 * @param start of the time axis, UTC
 * @param end of the time axis
 * @param altitude of the planet, degrees, where it is above the horizon
 * @param moonAltitude of the Moon, degrees, where it is above the horizon
 * @param sunAltitude of the Sun, degrees, throughout
 * @param bands shift and smear of each band while the planet can be recorded
 */
public record NightCurves(
        Instant start,
        Instant end,
        List<Point> altitude,
        List<Point> moonAltitude,
        List<Point> sunAltitude,
        List<BandCurves> bands) {
    private static final List<Double> STEPS_ARCSEC = List.of(0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0);

    /**
     * A point of a curve.
     *
     * @param utc when
     * @param value in the unit of the curve
     */
    public record Point(Instant utc, double value) {}

    /**
     * Dispersion of a band, arcsec.
     *
     * @param band which one
     * @param shift against green, towards the zenith positive
     * @param smear length along the vertical, edge to edge
     * @param resolution width of diffraction and turbulence
     */
    public record BandCurves(Band band, List<Point> shift, List<Point> smear, List<Point> resolution) {
        public BandCurves {
            shift = List.copyOf(shift);
            smear = List.copyOf(smear);
            resolution = List.copyOf(resolution);
        }
    }

    public NightCurves {
        altitude = List.copyOf(altitude);
        moonAltitude = List.copyOf(moonAltitude);
        sunAltitude = List.copyOf(sunAltitude);
        bands = List.copyOf(bands);
    }

    /** The curves of a plan; its hours must not be empty. */
    public static NightCurves of(NightPlan plan) {
        List<PlannedHour> hours = plan.hours();
        List<Point> altitude = new ArrayList<>();
        List<Point> moon = new ArrayList<>();
        List<Point> sun = new ArrayList<>();
        for (PlannedHour h : hours) {
            Instant utc = h.sky().utc();
            if (h.sky().altitudeDeg() >= 0) {
                altitude.add(new Point(utc, h.sky().altitudeDeg()));
            }
            if (h.sky().moonAltitudeDeg() >= 0) {
                moon.add(new Point(utc, h.sky().moonAltitudeDeg()));
            }
            sun.add(new Point(utc, h.sky().sunAltitudeDeg()));
        }
        List<BandCurves> bands = new ArrayList<>();
        for (int i = 0; i < plan.settings().bands().size(); i++) {
            List<Point> shift = new ArrayList<>();
            List<Point> smear = new ArrayList<>();
            List<Point> resolution = new ArrayList<>();
            for (PlannedHour h : hours) {
                if (h.usable() && !h.bands().isEmpty()) {
                    BandDispersion d = h.bands().get(i);
                    shift.add(new Point(h.sky().utc(), d.shiftArcsec()));
                    smear.add(new Point(h.sky().utc(), d.smearArcsec()));
                    resolution.add(new Point(h.sky().utc(), d.resolutionArcsec()));
                }
            }
            bands.add(new BandCurves(plan.settings().bands().get(i), shift, smear, resolution));
        }
        return new NightCurves(
                hours.get(0).sky().utc(), hours.get(hours.size() - 1).sky().utc(), altitude, moon, sun, bands);
    }

    /** Whether the planet is up at all. */
    public boolean empty() {
        return altitude.isEmpty();
    }

    /** Largest value of the dispersion that is drawn, arcsec. */
    public OptionalDouble largestArcsec() {
        return bands.stream()
                .flatMap(b -> java.util.stream.Stream.of(b.smear(), b.resolution()))
                .flatMap(List::stream)
                .mapToDouble(Point::value)
                .max();
    }

    /**
     * A round distance between lines of a grid, arcsec.
     *
     * @param most value at the top, arcsec
     * @param lines how many there may be above zero
     */
    public static double gridArcsec(double most, int lines) {
        return STEPS_ARCSEC.stream().filter(s -> most / s <= lines).findFirst().orElse(50.0);
    }
}

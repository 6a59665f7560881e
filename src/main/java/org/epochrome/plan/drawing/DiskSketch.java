package org.epochrome.plan.drawing;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.epochrome.disk.Disk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.View;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.GalileanMoons;
import org.epochrome.ephemeris.MoonPlace;
import org.epochrome.ephemeris.ShadowPlace;
import org.epochrome.ephemeris.body.RingFacts;

/**
 * How the planet looks, as lines: celestial north up, east on the left. Lengths are in equatorial radii from the disk's centre, x
 * to the right, y down.
 *
 * @param utc when
 * @param limb outline of the globe, closed
 * @param night outline of its dark part, closed, drawn as that of a sphere that is flattened; empty at full phase
 * @param graticule parallels and meridians every 30 degrees, in pieces that are seen
 * @param rings edges of the rings, in pieces that are seen
 * @param pole where the axis leaves the limb in the north
 * @param spots moons and shadows
 */
public record DiskSketch(
        Instant utc,
        List<Point> limb,
        List<Point> night,
        List<List<Point>> graticule,
        List<List<Point>> rings,
        Point pole,
        List<Spot> spots) {
    private static final int STEP_DEG = 30;
    private static final int FINE_DEG = 3;
    private static final double FULL_DEG = 1;

    /** A point of the drawing, equatorial radii. */
    public record Point(double x, double y) {}

    /**
     * A moon or the shadow of one.
     *
     * @param name of the moon
     * @param at its middle
     * @param radius equatorial radii of the planet
     * @param shadow whether it is the shadow
     * @param seen false for moons that are hidden or eclipsed
     */
    public record Spot(String name, Point at, double radius, boolean shadow, boolean seen) {}

    public DiskSketch {
        limb = List.copyOf(limb);
        night = List.copyOf(night);
        graticule = List.copyOf(graticule);
        rings = List.copyOf(rings);
        spots = List.copyOf(spots);
    }

    /** The drawing of an aspect, with the moons whose positions are known. */
    public static DiskSketch of(Aspect aspect) {
        View view = new View(Globe.of(aspect), new Disk(0, 0, 1, aspect.poleAngleDeg(), false));
        return new DiskSketch(
                aspect.utc(),
                limb(view),
                night(view, aspect),
                graticule(view, aspect),
                rings(view, aspect.body()),
                sky(view, view.limbRatio(), 0),
                spots(view, aspect));
    }

    private static Point sky(View view, double pole, double side) {
        return new Point(view.column(pole, side), view.row(pole, side));
    }

    private static List<Point> limb(View view) {
        List<Point> points = new ArrayList<>();
        for (int deg = 0; deg < 360; deg += FINE_DEG) {
            double angle = Math.toRadians(deg);
            points.add(sky(view, view.limbRatio() * Math.cos(angle), Math.sin(angle)));
        }
        return points;
    }

    /** Between the limb away from the Sun and the terminator, which is half an ellipse. */
    private static List<Point> night(View view, Aspect aspect) {
        if (aspect.phaseAngleDeg() < FULL_DEG) {
            return List.of();
        }
        double sun = Math.toRadians(aspect.sunPositionAngleDeg() - aspect.poleAngleDeg());
        double narrow = Math.cos(Math.toRadians(aspect.phaseAngleDeg()));
        List<Point> points = new ArrayList<>();
        for (int part = 0; part < 2; part++) {
            for (int deg = 0; deg <= 180; deg += FINE_DEG) {
                double angle = Math.toRadians(part == 0 ? deg : 180 - deg);
                double towards = -Math.sin(angle) * (part == 0 ? 1 : narrow);
                double across = Math.cos(angle);
                // position angles grow to the east, the side axis points west
                double pole = towards * Math.cos(sun) + across * Math.sin(sun);
                double side = -towards * Math.sin(sun) + across * Math.cos(sun);
                points.add(sky(view, view.limbRatio() * pole, side));
            }
        }
        return points;
    }

    private static List<List<Point>> graticule(View view, Aspect aspect) {
        Body body = aspect.body();
        double meridian = aspect.centralMeridianDeg(body.defaultSystem());
        List<List<Point>> lines = new ArrayList<>();
        for (int longitude = 0; longitude < 360; longitude += STEP_DEG) {
            double east = Math.toRadians(body.prograde() ? meridian - longitude : longitude - meridian);
            List<View.Place> places = new ArrayList<>();
            for (int latitude = -90; latitude <= 90; latitude += FINE_DEG) {
                places.add(view.place(Math.toRadians(latitude), east));
            }
            seen(places, lines);
        }
        for (int latitude = -60; latitude <= 60; latitude += STEP_DEG) {
            List<View.Place> places = new ArrayList<>();
            for (int east = -180; east <= 180; east += FINE_DEG) {
                places.add(view.place(Math.toRadians(latitude), Math.toRadians(east)));
            }
            seen(places, lines);
        }
        return lines;
    }

    private static void seen(List<View.Place> places, List<List<Point>> lines) {
        List<Point> piece = new ArrayList<>();
        for (View.Place place : places) {
            if (place.visible()) {
                piece.add(new Point(place.x(), place.y()));
            } else {
                end(piece, lines);
            }
        }
        end(piece, lines);
    }

    private static void end(List<Point> piece, List<List<Point>> lines) {
        if (piece.size() > 1) {
            lines.add(List.copyOf(piece));
        }
        piece.clear();
    }

    private static List<List<Point>> rings(View view, Body body) {
        List<List<Point>> lines = new ArrayList<>();
        double tilt = view.globe().tilt();
        for (RingFacts.Region region : body.rings().map(RingFacts::regions).orElse(List.of())) {
            for (double km : new double[] {region.innerKm(), region.outerKm()}) {
                double radius = km / body.equatorialRadiusKm();
                List<Point> piece = new ArrayList<>();
                for (int deg = 0; deg <= 360; deg += FINE_DEG) {
                    double angle = Math.toRadians(deg);
                    double side = radius * Math.cos(angle);
                    double pole = -radius * Math.sin(angle) * Math.sin(tilt);
                    boolean behind = Math.sin(angle) < 0 && view.ellipticRadius(pole, side) < 1;
                    if (behind) {
                        end(piece, lines);
                    } else {
                        piece.add(sky(view, pole, side));
                    }
                }
                end(piece, lines);
            }
        }
        return lines;
    }

    private static List<Spot> spots(View view, Aspect aspect) {
        List<Spot> spots = new ArrayList<>();
        if (aspect.body() != GalileanMoons.PLANET) {
            return spots;
        }
        GalileanMoons moons = GalileanMoons.at(aspect.utc());
        for (ShadowPlace s : moons.shadows()) {
            spots.add(new Spot(s.moon().displayName(), sky(view, s.pole(), s.side()), s.umbraRadius(), true, true));
        }
        for (MoonPlace m : moons.moons()) {
            spots.add(new Spot(
                    m.moon().displayName(),
                    sky(view, m.pole(), m.side()),
                    m.diameterArcsec() / aspect.equatorialDiameterArcsec(),
                    false,
                    !m.hidden() && !m.eclipsed()));
        }
        return spots;
    }
}

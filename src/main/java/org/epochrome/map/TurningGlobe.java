package org.epochrome.map;

import java.util.ArrayList;
import java.util.List;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.job.Rows;
import org.epochrome.turn.RingAttenuation;
import org.epochrome.turn.Rotation;

/**
 * The globe of a merged picture as it looks at other instants: its surface turned, and lit as it is then. What was out of
 * sight fades to the mean of its latitude, so that no detail is invented. Rings stay.
 */
public final class TurningGlobe {
    /** Rows of the map from which latitudes' means come: half a degree each. */
    private static final int ZONES_WIDTH = 720;

    private static final double ON_LIMB = 0.9995;

    private final NormalisedSurface surface;
    private final List<double[]> zones = new ArrayList<>();

    public TurningGlobe(NormalisedSurface surface) {
        this.surface = surface;
        GlobeMap map = GlobeMap.of(surface, new MapGrid(ZONES_WIDTH, true, 180), NormalisedSurface.Reach.PICTURE);
        for (int band = 0; band < surface.bands(); band++) {
            zones.add(map.zones(band));
        }
    }

    /**
     * The globe at another instant, in the unit of the picture.
     *
     * @param to its view then
     * @param rotation how far the surface stands, at the picture's instant, east of where it stands then
     */
    public List<Plane> at(View to, int width, int height, Rotation rotation) {
        List<Plane> shown = new ArrayList<>();
        List<RingAttenuation> veils = new ArrayList<>();
        for (BandLight light : surface.lights()) {
            veils.add(light.on(to, width, height));
            shown.add(new Plane(width, height));
        }
        Rows.each(height, (from, until) -> {
            for (int y = from; y < until; y++) {
                row(y, to, rotation, veils, shown);
            }
        });
        return shown;
    }

    private void row(int y, View to, Rotation rotation, List<RingAttenuation> veils, List<Plane> shown) {
        View then = surface.view();
        for (int x = 0; x < shown.get(0).width(); x++) {
            double pole = to.pole(x, y);
            double side = to.side(x, y);
            double beyond = to.ellipticRadius(pole, side) / ON_LIMB;
            if (beyond > 1) {
                // A blurred globe reaches beyond its limb, with the colours of the limb.
                pole /= beyond;
                side /= beyond;
            }
            double depth = to.depth(pole, side);
            double bodyX = to.bodyX(pole, depth);
            double bodyZ = to.bodyZ(pole, depth);
            double latitude = to.graphicLatitude(bodyX, side, bodyZ);
            double back = rotation.backRad(latitude);
            double thenX = bodyX * Math.cos(back) - side * Math.sin(back);
            double thenY = bodyX * Math.sin(back) + side * Math.cos(back);
            double thenPole = then.poleOf(thenX, bodyZ);
            double column = then.column(thenPole, thenY);
            double row = then.row(thenPole, thenY);
            double seen =
                    surface.seen(column, row, then.cosEmission(thenX, thenY, bodyZ), NormalisedSurface.Reach.PICTURE);
            for (int band = 0; band < shown.size(); band++) {
                double even = (1 - seen) * zone(band, latitude);
                even += seen > 0 ? seen * surface.at(band, column, row) : 0;
                RingAttenuation veil = veils.get(band);
                double brightness = surface.lights().get(band).brightness();
                shown.get(band).set(x, y, (float) (even * veil.shade().at(x, y)
                        + brightness * veil.rings().at(x, y)));
            }
        }
    }

    private double zone(int band, double latitudeRad) {
        double[] zone = zones.get(band);
        double place = (90 - Math.toDegrees(latitudeRad)) * zone.length / 180 - 0.5;
        int above = (int) Math.max(0, Math.min(zone.length - 2, Math.floor(place)));
        double part = Math.max(0, Math.min(1, place - above));
        return (1 - part) * zone[above] + part * zone[above + 1];
    }
}

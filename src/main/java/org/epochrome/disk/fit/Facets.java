package org.epochrome.disk.fit;

import java.util.Arrays;
import org.epochrome.disk.BilinearShare;
import org.epochrome.disk.Disk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.RingLight;
import org.epochrome.disk.Rings;
import org.epochrome.disk.Shading;
import org.epochrome.disk.View;

/**
 * The globe and its rings cut into small facets, in equatorial radii on the sky axes of the body: everything about the
 * picture of a ringed planet that does not depend on where it lies in the image. Each facet's light is shared between two
 * neighbouring layers: zones of the globe by planetographic latitude first, then places of the {@link RingLight}.
 */
final class Facets {
    /** Power by which the facets' angles widen towards the limb, where foreshortening makes them small. */
    private static final double THINNING = 0.75;

    private final Globe globe;
    private final int zones;
    private final int[] places;
    private final double depthDoubt;
    private int globeCount;
    private int count;
    private double[] pole = new double[1 << 16];
    private double[] side = new double[1 << 16];
    private double[] area = new double[1 << 16];
    private int[] layer = new int[1 << 16];
    private double[] above = new double[1 << 16];
    private double[] logIncidence = new double[1 << 16];
    private double[] logEmission = new double[1 << 16];
    private double[] attenuation = new double[1 << 16];

    /**
     * Cuts a ringed globe.
     *
     * @param step longest side of a facet, radii
     * @param zoneStep distance of zones, radians of latitude
     * @param ringStep distance of places in the rings, radii
     */
    Facets(Globe globe, double step, double zoneStep, double ringStep) {
        this.globe = globe;
        zones = (int) Math.ceil(Math.PI / zoneStep) + 1;
        Rings rings = globe.rings().orElseThrow();
        depthDoubt = rings.depthDoubt();
        places = RingLight.places(rings, ringStep);
        cutGlobe(step);
        globeCount = count;
        Rings.walk(globe, step, (region, part, p, s, a) -> {
            double place = part * (places[region + 1] - places[region] - 1);
            int below = (int) Math.min(place, places[region + 1] - places[region] - 2);
            add(p, s, a, zones + places[region] + below, place - below);
        });
    }

    private void cutGlobe(double step) {
        View view = new View(globe, new Disk(0, 0, 1, 0, false));
        double ratio = globe.apparentAxisRatio();
        int rounds = (int) Math.ceil(THINNING * Math.PI / 2 / step);
        int spokes = (int) Math.ceil(2 * Math.PI / step);
        for (int j = 0; j < spokes; j++) {
            double direction = 2 * Math.PI * (j + 0.5) / spokes;
            for (int i = 0; i < rounds; i++) {
                double part = (i + 0.5) / rounds;
                double power = Math.pow(part, THINNING);
                double angle = Math.PI / 2 * (1 - power);
                double width = Math.PI / 2 * THINNING * power / part / rounds;
                double sine = Math.sin(angle);
                double size = sine * Math.cos(angle) * width * (2 * Math.PI / spokes) * ratio;
                addGlobe(view, sine * ratio * Math.sin(direction), sine * Math.cos(direction), size);
            }
        }
    }

    private void addGlobe(View view, double p, double s, double size) {
        double depth = view.depth(p, s);
        if (Double.isNaN(depth)) {
            return;
        }
        double bodyX = view.bodyX(p, depth);
        double bodyZ = view.bodyZ(p, depth);
        double incidence = view.cosIncidence(bodyX, s, bodyZ);
        if (incidence <= Shading.LEAST_INCIDENCE) {
            return;
        }
        double slant = Rings.slantDepth(view, p, s, depth);
        double place = (view.graphicLatitude(bodyX, s, bodyZ) / Math.PI + 0.5) * (zones - 1);
        int below = (int) Math.max(0, Math.min(place, zones - 2));
        add(p, s, size * Math.exp(-slant), below, place - below);
        logIncidence[count - 1] = Math.log(incidence);
        logEmission[count - 1] = Math.log(Math.max(Shading.LEAST_EMISSION, view.cosEmission(bodyX, s, bodyZ)));
        attenuation[count - 1] = slant;
    }

    private void add(double p, double s, double size, int below, double share) {
        if (count == pole.length) {
            int larger = 2 * count;
            pole = Arrays.copyOf(pole, larger);
            side = Arrays.copyOf(side, larger);
            area = Arrays.copyOf(area, larger);
            layer = Arrays.copyOf(layer, larger);
            above = Arrays.copyOf(above, larger);
            logIncidence = Arrays.copyOf(logIncidence, larger);
            logEmission = Arrays.copyOf(logEmission, larger);
            attenuation = Arrays.copyOf(attenuation, larger);
        }
        pole[count] = p;
        side[count] = s;
        area[count] = size;
        layer[count] = below;
        above[count] = share;
        count++;
    }

    Globe globe() {
        return globe;
    }

    /** Number of zones of the globe. */
    int zones() {
        return zones;
    }

    /** Places in the rings, as {@link RingLight} counts them. */
    int[] places() {
        return places.clone();
    }

    /** Number of all layers. */
    int layers() {
        return zones + places[places.length - 1];
    }

    /** First layers of the globe and of each region of the rings, and the number of all at the end. */
    int[] groups() {
        int[] groups = new int[places.length + 1];
        for (int i = 0; i < places.length; i++) {
            groups[i + 1] = zones + places[i];
        }
        return groups;
    }

    /**
     * Draws the sharp layers, then two more: the derivative of the picture by Minnaert's exponent, and by how much it
     * changes if all optical depths change by {@link Rings#DEPTH_DOUBT} of themselves.
     *
     * @param radiusPx equatorial radius of the view's disk
     * @param coefficients brightness of the layers
     * @param drawn planes to draw in, all zero
     */
    void draw(
            View view,
            double radiusPx,
            double minnaert,
            double[] coefficients,
            float[][] drawn,
            int width,
            int height) {
        int layers = layers();
        for (int i = 0; i < count; i++) {
            double x = view.column(pole[i], side[i]);
            double y = view.row(pole[i], side[i]);
            int left = (int) Math.floor(x);
            int top = (int) Math.floor(y);
            if (left < 0 || top < 0 || left > width - 2 || top > height - 2) {
                continue;
            }
            int p = top * width + left;
            double fx = x - left;
            double fy = y - top;
            double light = area[i] * radiusPx * radiusPx;
            if (i < globeCount) {
                light *= Math.exp(minnaert * logIncidence[i] + (minnaert - 1) * logEmission[i]);
                double lit = light * (coefficients[layer[i]] * (1 - above[i]) + coefficients[layer[i] + 1] * above[i]);
                BilinearShare.add(drawn[layers], width, p, fx, fy, lit * (logIncidence[i] + logEmission[i]));
                if (attenuation[i] > 0) {
                    BilinearShare.add(drawn[layers + 1], width, p, fx, fy, lit * depthDoubt * attenuation[i]);
                }
            }
            BilinearShare.add(drawn[layer[i]], width, p, fx, fy, light * (1 - above[i]));
            BilinearShare.add(drawn[layer[i] + 1], width, p, fx, fy, light * above[i]);
        }
    }

    /** Mean brightness of the globe's zones, weighted by the light that an even globe would send from them. */
    double meanBrightness(double minnaert, double[] coefficients) {
        double sum = 0;
        double all = 0;
        for (int i = 0; i < globeCount; i++) {
            double light = area[i] * Math.exp(minnaert * logIncidence[i] + (minnaert - 1) * logEmission[i]);
            sum += light * (coefficients[layer[i]] * (1 - above[i]) + coefficients[layer[i] + 1] * above[i]);
            all += light;
        }
        return sum / all;
    }
}

package org.epochrome.map;

import java.util.ArrayList;
import java.util.List;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.job.Rows;

/**
 * A globe as a map.
 *
 * @param grid what the pixels mean
 * @param planes even brightness per band; NaN where nothing was seen
 * @param coverage how well each place was seen, 0 to 1
 */
public record GlobeMap(MapGrid grid, List<Plane> planes, Plane coverage) {

    /** Maps a surface. */
    public static GlobeMap of(NormalisedSurface surface, MapGrid grid) {
        return of(surface, grid, NormalisedSurface.Reach.MAP);
    }

    static GlobeMap of(NormalisedSurface surface, MapGrid grid, NormalisedSurface.Reach reach) {
        int width = grid.width();
        int height = grid.height();
        Plane coverage = new Plane(width, height);
        List<Plane> planes = new ArrayList<>();
        for (int band = 0; band < surface.bands(); band++) {
            planes.add(Plane.filled(width, height, Float.NaN));
        }
        Rows.each(height, (from, to) -> {
            for (int row = from; row < to; row++) {
                double latitude = Math.toRadians(grid.latitudeDeg(row));
                for (int column = 0; column < width; column++) {
                    View.Place place = surface.view().place(latitude, grid.eastRad(column));
                    if (!place.visible()) {
                        continue;
                    }
                    double seen = surface.seen(place.x(), place.y(), emission(surface.view(), place), reach);
                    if (seen > 0) {
                        coverage.set(column, row, (float) seen);
                        for (int band = 0; band < planes.size(); band++) {
                            planes.get(band).set(column, row, surface.at(band, place.x(), place.y()));
                        }
                    }
                }
            }
        });
        return new GlobeMap(grid, planes, coverage);
    }

    private static double emission(View view, View.Place place) {
        double pole = view.pole(place.x(), place.y());
        double side = view.side(place.x(), place.y());
        double depth = view.depth(pole, side);
        return Double.isNaN(depth) ? 0 : view.cosEmission(view.bodyX(pole, depth), side, view.bodyZ(pole, depth));
    }

    /** Mean brightness of each row weighted by its coverage; where nothing of a row was seen, that of the nearest. */
    double[] zones(int band) {
        double[] zones = new double[grid.height()];
        for (int row = 0; row < zones.length; row++) {
            double sum = 0;
            double weight = 0;
            for (int column = 0; column < grid.width(); column++) {
                float seen = coverage.at(column, row);
                if (seen > 0) {
                    sum += seen * planes.get(band).at(column, row);
                    weight += seen;
                }
            }
            zones[row] = weight > 0 ? sum / weight : Double.NaN;
        }
        return filled(zones);
    }

    private static double[] filled(double[] zones) {
        double[] filled = zones.clone();
        for (int row = 0; row < zones.length; row++) {
            for (int away = 1; Double.isNaN(filled[row]) && away < zones.length; away++) {
                double above = row >= away ? zones[row - away] : Double.NaN;
                double below = row + away < zones.length ? zones[row + away] : Double.NaN;
                filled[row] = Double.isNaN(above) ? below : above;
            }
        }
        return filled;
    }
}

package org.epochrome.image;

import java.util.List;
import org.epochrome.truth.TruthTable;

/** Pictures that are kept as tables of numbers. */
public final class Pictures {
    private Pictures() {}

    /** The picture whose pixel rows are the rows of a truth table. */
    public static Plane read(String csv) {
        List<TruthTable.Row> rows = TruthTable.rows(csv);
        Plane plane = new Plane(rows.get(0).cells().size(), rows.size());
        for (int y = 0; y < plane.height(); y++) {
            for (int x = 0; x < plane.width(); x++) {
                plane.set(x, y, Float.parseFloat(rows.get(y).cells().get(x)));
            }
        }
        return plane;
    }

    /** The picture as seen in a mirror: left and right swapped. */
    public static Plane mirrored(Plane plane) {
        Plane result = new Plane(plane.width(), plane.height());
        for (int y = 0; y < plane.height(); y++) {
            for (int x = 0; x < plane.width(); x++) {
                result.set(plane.width() - 1 - x, y, plane.at(x, y));
            }
        }
        return result;
    }

    /** The picture turned by a quarter, counter-clockwise as displayed: what was right is on top. */
    public static Plane quarterTurned(Plane plane) {
        Plane result = new Plane(/* width= */ plane.height(), /* height= */ plane.width());
        for (int y = 0; y < plane.height(); y++) {
            for (int x = 0; x < plane.width(); x++) {
                result.set(y, plane.width() - 1 - x, plane.at(x, y));
            }
        }
        return result;
    }
}

package org.epochrome.ephemeris;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.epochrome.truth.TruthTable;
import org.epochrome.truth.TruthTable.Row;
import org.junit.jupiter.api.Test;

class EarthOrientationTest {
    private static final double ARCSEC = Math.toRadians(1 / 3600.0);

    @Test
    void agreesWithIau2006And2000A() {
        List<Row> rows = TruthTable.rows("earth/rows.csv");
        assertEquals(31, rows.size());
        for (Row row : rows) {
            EarthOrientation earth = EarthOrientation.at(row.number("ttDays"), row.number("ut1Days"));
            Nutation nutation = Nutation.at(row.number("ttDays") / 36525);
            Vector3D pole = new Vector3D(row.number("poleX"), row.number("poleY"), row.number("poleZ"));
            // the terms left out add up to 0.005 arcsec
            assertEquals(row.number("dpsiArcsec"), nutation.longitudeRad() / ARCSEC, 0.006, row::toString);
            assertEquals(row.number("depsArcsec"), nutation.obliquityRad() / ARCSEC, 0.006, row::toString);
            assertEquals(0, Vector3D.angle(pole, earth.trueOfDate().z()) / ARCSEC, 0.006, row::toString);
            double gastDeg = Math.toDegrees(earth.apparentSiderealTimeRad());
            assertEquals(0, 3600 * Math.IEEEremainder(gastDeg - row.number("gastDeg"), 360), 0.006, row::toString);
        }
    }
}

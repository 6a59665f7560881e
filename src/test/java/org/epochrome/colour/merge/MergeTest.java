package org.epochrome.colour.merge;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.epochrome.image.Plane;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MergeTest {
    private static final float NAN = Float.NaN;

    @Test
    void weighsPixelByPixel() {
        Plane mean = mean(List.of(row(1, 1, 1), row(4, 4, 4)), List.of(row(1, 2, 0), row(1, 1, 5)));
        assertRow(mean, 2.5, 2, 4);
    }

    @Test
    void takesWhatThereIs() {
        Plane mean = mean(List.of(row(1, NAN, NAN), row(3, 3, NAN)), List.of(row(1, 9, 1), row(1, 0.1f, 1)));
        assertRow(mean, 2, 3, Double.NaN);
    }

    @Test
    void ofOnePlaneIsThePlane() {
        assertRow(mean(List.of(row(0.25f, -1, NAN)), List.of(row(3, 3, 3))), 0.25, -1, Double.NaN);
    }

    @Test
    void aPlaneAloneCoversWhatItHolds() {
        Coverage coverage = Merge.of(List.of(new Layer(row(0.25f, -1, NAN), row(3, 0, 3), 0.1f)))
                .coverage();
        assertRow(coverage.frames(), 1, 1, 0);
        assertRow(coverage.weight(), 3, 1e-9, 0);
    }

    /** Where all weights are zero the plain mean is better than nothing. */
    @Test
    void knowsWhatToDoWithoutWeights() {
        assertRow(mean(List.of(row(1, 2, 3), row(3, 4, 5)), List.of(row(0, 0, 0), row(0, 0, 0))), 2, 3, 4);
    }

    /** A moon in one of four frames, a cosmic ray in one of seven. */
    @ParameterizedTest
    @ValueSource(ints = {4, 5, 7})
    void leavesAnOutlierOutFromFourPlanesOn(int count) {
        List<Plane> planes = planes(count);
        planes.get(2).data()[1] = 9;
        Plane mean = mean(planes, evenWeights(count));
        double expected = 0;
        for (int k = 0; k < count; k++) {
            expected += k == 2 ? 0 : planes.get(k).data()[1] / (count - 1);
        }
        assertEquals(expected, mean.data()[1], 1e-6);
    }

    /** Of three, nobody can tell which one is wrong. */
    @Test
    void keepsAllOfThree() {
        List<Plane> planes = planes(3);
        planes.get(2).data()[1] = 9;
        double expected = (planes.get(0).data()[1] + planes.get(1).data()[1] + 9) / 3;
        assertEquals(expected, mean(planes, evenWeights(3)).data()[1], 1e-5);
    }

    /** Planes without data do not count towards the four. */
    @Test
    void keepsAllOfThreeWhereTheFourthHoldsNoData() {
        List<Plane> planes = planes(4);
        planes.get(0).data()[1] = NAN;
        planes.get(2).data()[1] = 9;
        double expected = (planes.get(1).data()[1] + planes.get(3).data()[1] + 9) / 3;
        assertEquals(expected, mean(planes, evenWeights(4)).data()[1], 1e-5);
    }

    /** Ordinary noise loses little: the mean of eight planes keeps most of the gain of sqrt 8. */
    @Test
    void keepsOrdinaryNoiseIn() {
        Random random = new Random(3);
        List<Plane> planes = new ArrayList<>();
        for (int k = 0; k < 8; k++) {
            Plane plane = new Plane(100, 100);
            for (int i = 0; i < plane.data().length; i++) {
                plane.data()[i] = (float) random.nextGaussian();
            }
            planes.add(plane);
        }
        Plane one = Plane.filled(100, 100, 1);
        Plane mean = mean(planes, Collections.nCopies(8, one));
        double square = 0;
        for (float v : mean.data()) {
            square += v * v / mean.data().length;
        }
        // 10000 pixels tell the variance to 1.4 %; leaving out what lies beyond 4 of eight's own scatter costs some 5
        // %.
        assertEquals(1 / 8.0, square, 0.1 / 8);
    }

    /** With the noise known nothing is lost to a scatter that is small by chance. */
    @Test
    void knowsOrdinaryNoise() {
        Random random = new Random(4);
        List<Layer> layers = new ArrayList<>();
        for (int k = 0; k < 5; k++) {
            Plane plane = new Plane(200, 200);
            for (int i = 0; i < plane.data().length; i++) {
                plane.data()[i] = (float) random.nextGaussian();
            }
            layers.add(new Layer(plane, Plane.filled(200, 200, 1), 1));
        }
        double square = 0;
        for (float v : Merge.of(layers).mean().data()) {
            square += v * v / 40000;
        }
        assertEquals(1 / 5.0, square, 0.03 / 5); // 40000 pixels tell the variance to 0.7 %
    }

    /** Two frames that saw a place well stand against five that saw it badly. */
    @Test
    void theWeightiestTellWhatIsFarOff() {
        List<Plane> planes = new ArrayList<>();
        List<Plane> weights = new ArrayList<>();
        for (int k = 0; k < 7; k++) {
            planes.add(row(k < 2 ? 1 + 0.01f * k : 3 + 0.01f * k));
            weights.add(row(k < 2 ? 1 : 0.002f));
        }
        assertEquals(1.005, mean(planes, weights).data()[0], 1e-6);
    }

    @Test
    void countsTheFramesThatCoverAPixel() {
        List<Layer> layers = new ArrayList<>();
        for (int k = 0; k < 6; k++) {
            Plane picture = row(1 + 0.01f * k, 1 + 0.01f * k, k == 0 ? 1 : NAN, NAN);
            picture.data()[0] = k == 3 ? 9 : picture.data()[0];
            layers.add(new Layer(picture, row(2, k == 5 ? 0.1f : 2, 2, 2), 0));
        }
        Coverage coverage = Merge.of(layers).coverage();
        assertRow(coverage.frames(), 5, 5, 1, 0);
        assertRow(coverage.weight(), 10, 10.1, 2, 0);
    }

    private static Plane mean(List<Plane> planes, List<Plane> weights) {
        List<Layer> layers = new ArrayList<>();
        for (int k = 0; k < planes.size(); k++) {
            layers.add(new Layer(planes.get(k), weights.get(k), 0));
        }
        return Merge.of(layers).mean();
    }

    private static List<Plane> planes(int count) {
        List<Plane> planes = new ArrayList<>();
        for (int k = 0; k < count; k++) {
            planes.add(row(1 + 0.01f * k, 0.5f + 0.01f * k, 0));
        }
        return planes;
    }

    private static List<Plane> evenWeights(int count) {
        return Collections.nCopies(count, row(1, 1, 1));
    }

    private static Plane row(float... values) {
        return new Plane(values.length, 1, values);
    }

    private static void assertRow(Plane plane, double... values) {
        assertEquals(values.length, plane.data().length);
        for (int i = 0; i < values.length; i++) {
            assertEquals(values[i], plane.data()[i], 1e-5);
        }
    }
}

package org.epochrome.disk.model;

import java.util.stream.IntStream;
import org.epochrome.disk.solve.ObservationBatch;
import org.epochrome.disk.solve.Skyline;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Smear;

/** The normal equations of a model of a disk: each pixel is an observation of markings and shape. */
final class ModelEquations {
    private static final double FAINT = 1e-5;
    /** Parts in which the equations are added up, whatever the number of threads. */
    private static final int PARTS = 4;

    private final DiskModel model;
    private final Smear smear;

    /** @param smear that of the model */
    ModelEquations(DiskModel model, Smear smear) {
        this.model = model;
        this.smear = smear;
    }

    /** The normal equations of some pixels, without what is expected beforehand. */
    Skyline observed(int[] pixels, double[] weights) {
        Plane[] layers = model.blurred().all();
        int[] first = model.markings().skyline(Unknowns.SHAPE);
        Skyline[] parts = new Skyline[PARTS];
        IntStream.range(0, PARTS).parallel().forEach(part -> {
            int start = (int) ((long) pixels.length * part / PARTS);
            int end = (int) ((long) pixels.length * (part + 1) / PARTS);
            parts[part] = new Skyline(first);
            addNormals(layers, pixels, weights, start, end, parts[part]);
        });
        for (int i = 1; i < PARTS; i++) {
            parts[0].add(parts[i]);
        }
        return parts[0];
    }

    private void addNormals(Plane[] layers, int[] pixels, double[] weights, int from, int to, Skyline normals) {
        ShapeSlopes shapeSlopes = new ShapeSlopes(
                model.shape(),
                smear,
                model.blurred().picture(),
                model.blurred().moments(),
                layers[model.markings().rings() + 1].data(),
                layers[model.markings().rings() + 2].data(),
                model.samples());
        ObservationBatch batch = new ObservationBatch(
                normals,
                Markings.SPOKE_WEIGHTS + 1,
                Markings.SPOKE_WEIGHTS * model.markings().rings() + Unknowns.SHAPE);
        double[] w = new double[Markings.SPOKE_WEIGHTS];
        for (int k = from; k < to; k++) {
            if (model.isDarkerThanCut(pixels[k])) {
                continue;
            }
            slopes(layers, shapeSlopes, pixels[k], batch.starts(), batch.lengths(), batch.slopes(), w);
            batch.add(weights[k], model.residual(pixels[k]));
        }
        batch.end();
    }

    /** Derivatives of the model at a pixel: runs of rings, one for each spoke, and the shape. */
    private void slopes(
            Plane[] layers, ShapeSlopes shapeSlopes, int p, int[] starts, int[] lengths, double[] slopes, double[] w) {
        int width = model.samples().data().width();
        int x = p % width;
        int y = p / width;
        int rings = model.markings().rings();
        int least = 0;
        while (least < rings && layers[least].data()[p] <= FAINT) {
            least++;
        }
        int most = rings;
        while (most > least && layers[most - 1].data()[p] <= FAINT) {
            most--;
        }
        double direction = Math.atan2(
                model.view().pole(x, y) / model.view().limbRatio(), model.view().side(x, y));
        int spoke = model.markings().spokeWeights(direction, w);
        int wrapped = Math.max(0, spoke + w.length - model.markings().spokes());
        int n = 0;
        for (int i = 0; i < w.length; i++) {
            // Spokes beyond the last are the first ones and come first.
            int s = i < wrapped ? w.length - wrapped + i : i - wrapped;
            starts[i] = (spoke + s) % model.markings().spokes() * rings + least;
            lengths[i] = most - least;
            for (int r = least; r < most; r++) {
                slopes[n++] = layers[r].data()[p] * w[s];
            }
        }
        starts[w.length] = model.markings().size();
        lengths[w.length] = Unknowns.SHAPE;
        shapeSlopes.put(x, y, slopes, n);
    }
}

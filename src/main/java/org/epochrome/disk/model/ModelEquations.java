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
        Group group = new Group(layers, shapeSlopes, normals);
        for (int k = from; k < to; k++) {
            if (!model.isDarkerThanCut(pixels[k])) {
                group.add(pixels[k], weights[k]);
            }
        }
        group.end();
    }

    /**
     * Neighbouring pixels between the same spokes. They depend on nearly the same unknowns: with those of all of them, they go into
     * the equations together.
     */
    private final class Group {
        private final Plane[] layers;
        private final ShapeSlopes shapeSlopes;
        private final ObservationBatch batch;
        private final int rings = model.markings().rings();
        private final int width = model.samples().data().width();
        private final int[] pixels = new int[ObservationBatch.MOST];
        private final double[] weights = new double[ObservationBatch.MOST];
        private final double[][] spokeWeights = new double[ObservationBatch.MOST][Markings.SPOKE_WEIGHTS];
        private double[] next = new double[Markings.SPOKE_WEIGHTS];
        private int count;
        private int spoke;
        /** First ring that one of the pixels depends on, and the one after the last. */
        private int least;

        private int most;

        Group(Plane[] layers, ShapeSlopes shapeSlopes, Skyline normals) {
            this.layers = layers;
            this.shapeSlopes = shapeSlopes;
            batch = new ObservationBatch(
                    normals, Markings.SPOKE_WEIGHTS + 1, Markings.SPOKE_WEIGHTS * rings + Unknowns.SHAPE);
        }

        void add(int p, double weight) {
            int own = model.spoke(p, next);
            if (count == ObservationBatch.MOST || own != spoke) {
                put();
            }
            if (count == 0) {
                spoke = own;
                least = rings;
                most = 0;
            }
            double[] free = spokeWeights[count];
            spokeWeights[count] = next;
            next = free;
            pixels[count] = p;
            weights[count] = weight;
            count++;
            int first = 0;
            while (first < rings && layers[first].data()[p] <= FAINT) {
                first++;
            }
            int last = rings;
            while (last > first && layers[last - 1].data()[p] <= FAINT) {
                last--;
            }
            least = Math.min(least, first);
            most = Math.max(most, last);
        }

        void end() {
            put();
            batch.end();
        }

        private void put() {
            for (int i = 0; i < count; i++) {
                slopes(pixels[i], spokeWeights[i], batch.starts(), batch.lengths(), batch.slopes());
                batch.add(weights[i], model.residual(pixels[i]));
            }
            count = 0;
        }

        /** Derivatives of the model at a pixel: runs of rings, one for each spoke, and the shape. */
        private void slopes(int p, double[] w, int[] starts, int[] lengths, double[] slopes) {
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
            shapeSlopes.put(p % width, p / width, slopes, n);
        }
    }
}

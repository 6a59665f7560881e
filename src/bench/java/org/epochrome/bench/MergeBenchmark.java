package org.epochrome.bench;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.epochrome.colour.merge.Layer;
import org.epochrome.colour.merge.Merge;
import org.epochrome.colour.merge.Merge.Merged;
import org.epochrome.image.Plane;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Setup;

/** Merging planes that are turned already; the times are for a pixel of the result. From four planes on outliers are left out. */
public class MergeBenchmark extends PixelBenchmark {
    @Param({"3", "10"})
    public int planes;

    private List<Layer> layers;

    @Setup
    public void prepare(DemoScene scene) {
        Random dice = new Random(7);
        Plane even = new Plane(DemoScene.SIDE, DemoScene.SIDE);
        Arrays.fill(even.data(), 1);
        layers = Stream.generate(() -> new Layer(noisy(scene.frames.get(0).pixels(), dice), even, 0.01f))
                .limit(planes)
                .toList();
    }

    @Benchmark
    public Merged merge() {
        return Merge.of(layers);
    }

    private static Plane noisy(Plane plane, Random dice) {
        Plane noisy = plane.copy();
        for (int i = 0; i < noisy.data().length; i++) {
            noisy.data()[i] += (float) (0.01 * dice.nextGaussian());
        }
        return noisy;
    }
}

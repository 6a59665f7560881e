package org.epochrome.bench;

import java.util.concurrent.ForkJoinPool;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Spline;
import org.epochrome.job.Progress;
import org.epochrome.job.Rows;
import org.epochrome.session.schedule.Turning;
import org.epochrome.turn.Rotation;
import org.epochrome.turn.Turned;
import org.epochrome.turn.Turner;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.TearDown;

/** Turning a frame to the epoch, on one thread and on two. */
public class TurnBenchmark extends PixelBenchmark {
    @Param({"1", "2"})
    public int threads;

    private DemoScene scene;
    private ForkJoinPool pool;
    private View view;
    private Rotation rotation;
    private Turner turner;
    private Spline spline;
    private float[] columns;
    private float[] rows;

    @Setup
    public void prepare(DemoScene demo) {
        scene = demo;
        pool = new ForkJoinPool(threads);
        view = scene.turning.viewAtEpoch(scene.frames.reference().disk());
        rotation = scene.turning.rotation(scene.frames.get(0).exposure());
        turner = Turning.turner(scene.frames.get(0));
        turned(turner);
        spline = new Spline(scene.frames.get(0).pixels());
        columns = new float[DemoScene.PIXELS];
        rows = new float[DemoScene.PIXELS];
        for (int i = 0; i < DemoScene.PIXELS; i++) {
            int x = i % DemoScene.SIDE;
            int y = i / DemoScene.SIDE;
            columns[i] = (float) (x + 2.3 + 3.3 * Math.sin(y / 50.0));
            rows[i] = (float) (y - 1.7 + 1.1 * Math.sin(x / 40.0));
        }
    }

    @TearDown
    public void stop() {
        pool.shutdown();
    }

    /** Resampling alone, at places that are known: what the remap function of an image library does. */
    @Benchmark
    public Plane remap() {
        return pool.submit(this::remapped).join();
    }

    /** Turning by a turner that has turned before: the places, shading, trust and resampling. */
    @Benchmark
    public Turned turnAgain() {
        return pool.submit(() -> turned(turner)).join();
    }

    /** All of turning a frame: also its own shading, the shading at the epoch and the splines' coefficients. */
    @Benchmark
    public Turned turn() {
        return pool.submit(() -> turned(Turning.turner(scene.frames.get(0)))).join();
    }

    private Turned turned(Turner by) {
        return by.turn(view, DemoScene.SIDE, DemoScene.SIDE, rotation, Progress.NONE);
    }

    private Plane remapped() {
        Plane result = new Plane(DemoScene.SIDE, DemoScene.SIDE);
        Rows.each(DemoScene.SIDE, (from, to) -> {
            for (int i = from * DemoScene.SIDE; i < to * DemoScene.SIDE; i++) {
                result.data()[i] = spline.at(columns[i], rows[i]);
            }
        });
        return result;
    }
}

package org.epochrome.bench;

import java.util.OptionalDouble;
import org.epochrome.disk.DispersionDeconvolution;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.View;
import org.epochrome.disk.fit.DiskFit;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.SmearModel;
import org.epochrome.job.Progress;
import org.epochrome.session.compare.FrameLight;
import org.epochrome.session.schedule.AtmosphericDispersion;
import org.epochrome.session.schedule.WorkingFrame;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Setup;

/** What is done to the disk of one frame: its picture, its fit, the removal of its dispersion blur. */
public class DiskBenchmark extends PixelBenchmark {
    private WorkingFrame frame;
    private View view;
    private DiskFit fit;
    private double noise;

    @Setup
    public void prepare(DemoScene scene) {
        frame = scene.frames.get(0);
        view = new View(frame.exposure().globe(), frame.disk().disk());
        SmearModel smear = AtmosphericDispersion.over(scene.recipe)
                .smear(
                        frame.exposure().band(),
                        frame.exposure().aspect(),
                        frame.disk().disk());
        fit = new DiskFit(frame.exposure().globe(), true, false, smear, OptionalDouble.empty(), OptionalDouble.empty());
        FrameLight light = FrameLight.of(frame.pixels(), frame.disk());
        noise = light.noise() * light.level();
    }

    /** The blurred picture of the even globe. */
    @Benchmark
    public Plane shading() {
        return frame.disk().shading().picture(view, DemoScene.SIDE, DemoScene.SIDE);
    }

    /** The fit from nothing: start, coarse, fine. */
    @Benchmark
    public FittedDisk diskFit() {
        return fit.fit(frame.pixels(), Progress.NONE);
    }

    @Benchmark
    public Plane deconvolution() {
        return DispersionDeconvolution.of(
                frame.pixels(),
                frame.disk(),
                frame.exposure().globe(),
                noise,
                DispersionDeconvolution.Extent.ALL,
                Progress.NONE);
    }
}

package org.epochrome.bench;

import java.util.List;
import org.epochrome.align.Link;
import org.epochrome.colour.merge.Merge.Merged;
import org.epochrome.disk.FittedDisk;
import org.epochrome.job.Progress;
import org.epochrome.moon.removal.Moons;
import org.epochrome.session.combine.Merging;
import org.epochrome.session.compare.Comparison;
import org.epochrome.session.compare.Details;
import org.epochrome.session.schedule.Memory;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.Setup;

/** What is done to three frames together; the times are for a pixel of one of them. */
@OperationsPerInvocation(3 * DemoScene.PIXELS)
public class SessionBenchmark extends PixelBenchmark {
    private DemoScene scene;
    private FittedDisk reference;

    @Setup
    public void prepare(DemoScene demo) {
        scene = demo;
        reference = scene.frames.reference().disk();
    }

    /** Turns the frames on the common pixels and measures the shifts of their detail. */
    @Benchmark
    public List<Link> comparison() {
        return new Comparison(new Details(scene.turning, reference, 1), scene.frames).links(Progress.NONE);
    }

    /** Turns the frames to the epoch and merges them by band, without moons. */
    @Benchmark
    public List<Merged> turnAndMerge() {
        Merging merging = new Merging(
                scene.frames, scene.turning, Moons.NONE, scene.turning.viewAtEpoch(reference), Memory.ofThisHeap());
        return List.of("R", "G", "B").stream()
                .map(band -> merging.band(band, Progress.NONE))
                .toList();
    }
}

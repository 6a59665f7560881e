package org.epochrome.session.schedule;

import java.util.AbstractList;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.epochrome.disk.FittedDisk;
import org.epochrome.image.Plane;
import org.epochrome.job.Progress;
import org.epochrome.text.Message;

/**
 * The frames of a session after one of its stages. Each stage takes them and gives them changed.
 *
 * @param schedule when they were recorded, and the epoch
 * @param all one for each exposure, in its order
 * @param warnings what the user should know so far, a sentence each
 */
public record WorkingFrames(Schedule schedule, List<WorkingFrame> all, List<Message> warnings) {
    public WorkingFrames {
        all = List.copyOf(all);
        warnings = List.copyOf(warnings);
    }

    /** Frames whose disks were just found. */
    public static WorkingFrames of(Schedule schedule, List<Plane> planes, List<FittedDisk> disks) {
        return new WorkingFrames(
                schedule,
                IntStream.range(0, disks.size())
                        .mapToObj(i -> new WorkingFrame(
                                schedule.exposures().get(i), () -> planes.get(i), disks.get(i), List.of()))
                        .toList(),
                List.of());
    }

    public int size() {
        return all.size();
    }

    public WorkingFrame get(int index) {
        return all.get(index);
    }

    /** The frame on whose pixels the result lies. */
    public WorkingFrame reference() {
        return all.get(schedule.reference());
    }

    public List<FittedDisk> disks() {
        return all.stream().map(WorkingFrame::disk).toList();
    }

    /** The pixels of the frames, each read or made when it is asked for. */
    public List<Plane> planes() {
        return new AbstractList<>() {
            @Override
            public Plane get(int index) {
                return all.get(index).pixels();
            }

            @Override
            public int size() {
                return all.size();
            }
        };
    }

    /** Each frame changed by itself. */
    public WorkingFrames map(UnaryOperator<WorkingFrame> change) {
        return new WorkingFrames(schedule, all.stream().map(change).toList(), warnings);
    }

    /** The frames with their disks elsewhere. */
    public WorkingFrames at(List<FittedDisk> disks) {
        return new WorkingFrames(
                schedule,
                IntStream.range(0, all.size())
                        .mapToObj(i -> all.get(i).at(disks.get(i)))
                        .toList(),
                warnings);
    }

    /** The frames with other pixels. */
    public WorkingFrames with(List<Plane> planes) {
        return new WorkingFrames(
                schedule,
                IntStream.range(0, all.size())
                        .mapToObj(i -> all.get(i).with(() -> planes.get(i)))
                        .toList(),
                warnings);
    }

    /**
     * The frames with other pixels.
     *
     * @param made gives those of a frame by its number: when they are asked for, and again if memory does not hold them
     */
    public WorkingFrames remade(IntFunction<Plane> made, Memory memory, Progress progress) {
        return with(new PlaneStore(
                        all.size(),
                        i -> {
                            progress.check();
                            return made.apply(i);
                        },
                        memory.heldBytes())
                .filled());
    }

    /** The frames with more for the user to know. */
    public WorkingFrames warned(List<Message> more) {
        List<Message> both = new ArrayList<>(warnings);
        both.addAll(more);
        return new WorkingFrames(schedule, all, both);
    }

    /** The frames with something for the user to know before everything else. */
    public WorkingFrames warnedFirst(List<Message> earlier) {
        return new WorkingFrames(schedule, all, earlier).warned(warnings);
    }
}

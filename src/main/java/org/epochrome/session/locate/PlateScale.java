package org.epochrome.session.locate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.epochrome.disk.FittedDisk;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.io.head.FrameHead;
import org.epochrome.session.schedule.AtmosphericDispersion;
import org.epochrome.session.schedule.ManualDisks;
import org.epochrome.session.schedule.Schedule;
import org.epochrome.text.Message;

/**
 * The plate scale that frames of one camera share: one planet has one size. It is the weighted mean of what the disks show and
 * what the header says, robust against a disk whose fit went astray; a frame whose disk differs clearly has another scale.
 */
final class PlateScale {
    /** Relative standard error of a disk's size in addition to that of its fit (from rendered scenes with real optics). */
    private static final double FIT_SIGMA = 0.002;
    /** Relative standard error of a scale in a header: focus and temperature change it (common practice, no source). */
    private static final double HEADER_SIGMA = 0.004;
    /** Disks that differ from the others by a larger fraction were taken at another scale: no focus does that. */
    private static final double OTHER_SCALE = 0.025;
    /** Distance from the median in standard errors from which a disk counts less. */
    private static final double FAR = 2;

    private final Schedule schedule;
    private final ManualDisks held;
    private final boolean freeScale;

    /** @param freeScale whether each band has a scale of its own */
    PlateScale(Schedule schedule, ManualDisks held, boolean freeScale) {
        this.schedule = schedule;
        this.held = held;
        this.freeScale = freeScale;
    }

    /**
     * What is known of a disk's size.
     *
     * @param radiusPx the equatorial radius, of the common scale or of the frame's own
     * @param sigmaPx its standard error
     * @param own whether the frame has a scale of its own
     */
    record Size(double radiusPx, double sigmaPx, boolean own) {}

    /**
     * The sizes of all disks.
     *
     * @param all one for each
     * @param warnings what the user should know, a sentence each
     */
    record Sizes(List<Size> all, List<Message> warnings) {}

    /**
     * The sizes of all disks; those set by hand keep theirs.
     *
     * @param fits where the disks were found, each by itself
     */
    Sizes sizes(List<FittedDisk> fits) {
        List<Message> warnings = new ArrayList<>();
        Map<String, List<Integer>> cameras = new LinkedHashMap<>();
        for (int i = 0; i < fits.size(); i++) {
            if (!held.any(i)) {
                cameras.computeIfAbsent(likes(i), k -> new ArrayList<>()).add(i);
            }
        }
        Size[] sizes = new Size[fits.size()];
        Arrays.setAll(
                sizes,
                i -> new Size(
                        fits.get(i).disk().equatorialRadiusPx(), fits.get(i).radiusSigmaPx(), true));
        cameras.values().stream()
                .filter(members -> members.size() > 1)
                .forEach(members -> share(members, fits, sizes, warnings));
        return new Sizes(List.of(sizes), List.copyOf(warnings));
    }

    private void share(List<Integer> members, List<FittedDisk> fits, Size[] sizes, List<Message> warnings) {
        double[] scales = members.stream()
                .mapToDouble(i ->
                        AtmosphericDispersion.arcsecPerPx(aspect(i), fits.get(i).disk()))
                .toArray();
        double[] doubts = members.stream()
                .mapToDouble(i -> Math.hypot(
                        FIT_SIGMA,
                        fits.get(i).radiusSigmaPx() / fits.get(i).disk().equatorialRadiusPx()))
                .toArray();
        double middle = median(scales);
        double sum = 0;
        double weights = 0;
        for (int k = 0; k < scales.length; k++) {
            double part = Math.abs(scales[k] / middle - 1);
            if (part < OTHER_SCALE) {
                double far = part / (FAR * doubts[k]);
                double weight = 1 / (doubts[k] * doubts[k] * Math.max(1, far * far));
                sum += weight * scales[k];
                weights += weight;
            }
        }
        OptionalDouble header = header(members);
        if (header.isPresent() && Math.abs(header.getAsDouble() / middle - 1) < OTHER_SCALE) {
            double weight = 1 / (HEADER_SIGMA * HEADER_SIGMA);
            sum += weight * header.getAsDouble();
            weights += weight;
        }
        double common = weights > 0 ? sum / weights : middle;
        for (int k = 0; k < scales.length; k++) {
            int i = members.get(k);
            double radius = 0.5 * aspect(i).equatorialDiameterArcsec() / common;
            if (Math.abs(scales[k] / common - 1) < OTHER_SCALE) {
                sizes[i] = new Size(radius, radius / Math.sqrt(weights), false);
            } else {
                double found = fits.get(i).disk().equatorialRadiusPx();
                warnings.add(Message.of(
                        "scale.other",
                        schedule.exposures().get(i).name(),
                        Math.abs(100 * (found / radius - 1)),
                        Message.of(found > radius ? "scale.larger" : "scale.smaller")));
            }
        }
    }

    /** The scale that the headers of frames agree on. */
    private OptionalDouble header(List<Integer> members) {
        double[] told = members.stream()
                .map(i -> schedule.exposures().get(i).headerScaleArcsecPerPx())
                .filter(OptionalDouble::isPresent)
                .mapToDouble(OptionalDouble::getAsDouble)
                .toArray();
        return told.length == members.size() ? OptionalDouble.of(median(told)) : OptionalDouble.empty();
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int n = sorted.length;
        return 0.5 * (sorted[(n - 1) / 2] + sorted[n / 2]);
    }

    private Aspect aspect(int index) {
        return schedule.exposures().get(index).aspect();
    }

    /** What frames of one scale have in common. */
    private String likes(int index) {
        FrameHead head = schedule.exposures().get(index).frame().head();
        String size = head.width() + " x " + head.height();
        return freeScale ? size + schedule.exposures().get(index).band().name() : size;
    }
}

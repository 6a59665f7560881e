package org.epochrome.session.locate;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.model.EdgeSpread;
import org.epochrome.image.Plane;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.session.schedule.WorkingFrame;
import org.epochrome.session.schedule.WorkingFrames;
import org.epochrome.text.Message;

/** Whether frames look as if they had been processed before: sharpened, or encoded for a screen. */
public final class ProcessingCheck {
    /**
     * Depth of the dark seam that sharpening leaves in the sky along the limb, as a part of the disk's brightness, from which a frame
     * looks sharpened. Sharpened scenes have 0.013 to 0.10; scenes that are not have 0.0001 at most, Hubble frames none.
     */
    private static final double SEAM = 0.01;

    /**
     * Error of the centre on frames that were sharpened, in blurs: no spread function of light makes such a limb. Rendered scenes have 0.03 to
     * 0.07.
     */
    private static final double SHARPENED_ERROR = 0.1;
    /** Error of the centre on encoded frames, in blurs: their limb follows no law; rendered scenes have 0.02 to 0.1, and detail that errs by more. */
    private static final double ENCODED_ERROR = 0.05;

    private final List<String> sharpened = new ArrayList<>();
    private final Map<EncodingSign, List<String>> encoded = new EnumMap<>(EncodingSign.class);
    private final Decoded decoded;
    private double deepest;
    private double largest;
    private int looked;

    /** The disk that is found in a frame if it is taken for encoded; the one that was found where there is none. */
    interface Decoded {
        FittedDisk fit(Plane plane, Globe globe, FittedDisk linear);
    }

    public ProcessingCheck(Decoded decoded) {
        this.decoded = decoded;
    }

    /** The frames, the disks less sure on those that look processed, and what the user should know of these. */
    public WorkingFrames judged(WorkingFrames frames) {
        List<FittedDisk> judged = new ArrayList<>();
        for (WorkingFrame frame : frames.all()) {
            Exposure exposure = frame.exposure();
            judged.add(
                    look(exposure.name(), exposure.countsAsLinear(), frame.pixels(), exposure.globe(), frame.disk()));
        }
        return frames.at(judged).warned(warnings());
    }

    /**
     * Looks at a frame.
     *
     * @param name of its file
     * @param linear whether it is assumed linear because no encoding was given
     * @param plane its pixels
     * @param globe aspect of the body
     * @param fit its disk
     * @return the disk, with a larger error of its centre if the frame looks processed and the disk was fitted
     */
    public FittedDisk look(String name, boolean linear, Plane plane, Globe globe, FittedDisk fit) {
        looked++;
        Optional<EncodingSign> sign = linear ? EncodingSign.in(plane, globe, fit) : Optional.empty();
        if (sign.isPresent()) { // what is fitted to a frame that is not linear tells nothing of its sharpness
            add(encoded.computeIfAbsent(sign.get(), s -> new ArrayList<>()), name);
            return fit.centreSigmaPx() > 0 ? encoded(plane, globe, fit) : fit;
        }
        double seam = EdgeSpread.undershoot(fit.shading());
        if (seam > SEAM) {
            if (EncodingSign.showsSky(plane, globe, fit)) { // behind a cut nobody sees a seam
                add(sharpened, name);
                deepest = Math.max(deepest, seam);
            }
            return withCentreUncertainty(fit, SHARPENED_ERROR);
        }
        return fit;
    }

    private static FittedDisk withCentreUncertainty(FittedDisk fit, double blurs) {
        return fit.centreSigmaPx() > 0
                ? fit.withCentreUncertainty(blurs * fit.shading().blurPx())
                : fit;
    }

    /** The disk as unsure as the encoding leaves it. */
    private FittedDisk encoded(Plane plane, Globe globe, FittedDisk fit) {
        Disk there = decoded.fit(plane, globe, fit).disk();
        double movedPx =
                Math.hypot(there.x() - fit.disk().x(), there.y() - fit.disk().y());
        double grownPx = Math.abs(there.equatorialRadiusPx() - fit.disk().equatorialRadiusPx());
        largest = Math.max(largest, grownPx / fit.disk().equatorialRadiusPx());
        return withCentreUncertainty(fit, ENCODED_ERROR).withCentreUncertainty(movedPx / Math.sqrt(2), grownPx);
    }

    private static void add(List<String> names, String name) {
        if (!names.contains(name)) { // a colour frame has three planes
            names.add(name);
        }
    }

    /** What the user should know. */
    public List<Message> warnings() {
        List<Message> warnings = new ArrayList<>();
        encoded.forEach((sign, names) -> warnings.add(Message.of(
                "processing.encoded",
                names(names),
                sign.words(),
                largest > 0 ? Message.of("processing.byUpTo", 100 * largest) : "")));
        if (!sharpened.isEmpty()) {
            warnings.add(Message.of(
                    sharpened.size() == 1 ? "processing.sharpened" : "processing.sharpenedFrames",
                    names(sharpened),
                    100 * deepest));
        }
        return warnings;
    }

    private Object names(List<String> names) {
        return names.size() == looked && looked > 1 ? Message.of("processing.all") : String.join(", ", names);
    }
}

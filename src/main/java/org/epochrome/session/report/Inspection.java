package org.epochrome.session.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.fit.DiskFit;
import org.epochrome.disk.start.DiskNotFound;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.image.blur.Smear;
import org.epochrome.image.defect.FrameDefects;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.job.Progress;
import org.epochrome.session.combine.RecipeCheck;
import org.epochrome.session.locate.ImageOrientation;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.session.recipe.Place;
import org.epochrome.text.Message;

/**
 * A look at one frame on its own.
 *
 * @param frame what the file says
 * @param aspect how the body stood; empty if the body is not known
 * @param disk the disk in it (green of a colour frame); empty if it was not found or the body is not known
 * @param notes what the user should know, a sentence each
 */
public record Inspection(DatedFrame frame, Optional<Aspect> aspect, Optional<FittedDisk> disk, List<Message> notes) {

    /** Looks at a frame; a missing disk is a note, not an error. */
    public static Inspection of(DatedFrame frame, Optional<Body> body, Place place, OptionalDouble northDeg) {
        List<Message> notes = new ArrayList<>(frame.notes());
        if (body.isEmpty()) {
            notes.add(Message.of("inspect.noBody"));
            return new Inspection(frame, Optional.empty(), Optional.empty(), notes);
        }
        Aspect aspect = Ephemeris.aspect(body.get(), frame.timing().span().mid(), place.site());
        if (aspect.nearSun()) {
            notes.add(RecipeCheck.SUN_CAUTION);
        }
        int plane = frame.band().planes().size() / 2;
        Exposure exposure =
                new Exposure(frame, plane, frame.band().planes().get(plane), aspect, place.flattening(aspect));
        FrameDefects read = exposure.read();
        notes.addAll(read.notes());
        Optional<FittedDisk> disk = Optional.empty();
        try {
            boolean axis = body.get().showsAxis();
            OptionalDouble header = axis || northDeg.isPresent() ? OptionalDouble.empty() : exposure.headerNorthDeg();
            OptionalDouble known = header.isPresent() ? header : northDeg;
            disk = Optional.of(new DiskFit(
                            exposure.globe(),
                            body.get().belted(),
                            header.isPresent() && exposure.headerMirrored().orElse(false),
                            Smear.NONE,
                            known.isPresent() || axis ? known : OptionalDouble.of(0),
                            OptionalDouble.empty())
                    .fit(read.masked(), Progress.NONE));
            if (header.isPresent()) {
                notes.add(Message.of("inspect.northFromHeader"));
            } else if (northDeg.isEmpty()) {
                notes.add(Message.of(
                        ImageOrientation.ringsTellNorth(aspect)
                                ? "inspect.northFromRings"
                                : axis ? "inspect.northUncertain" : "inspect.northAssumed"));
            }
        } catch (DiskNotFound e) {
            notes.add(Message.of("inspect.noDisk", e.message()));
        }
        return new Inspection(frame, Optional.of(aspect), disk, notes);
    }
}

package org.epochrome.session.report;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.image.Band;
import org.epochrome.io.head.FrameHead;
import org.epochrome.io.head.HeaderGeometry;
import org.epochrome.text.Message;

/** A frame that was only looked at. Keys that need a planet or a disk are left out without one. */
record InspectionObject(
        String file,
        String band,
        String bandSource,
        @JsonInclude(JsonInclude.Include.NON_ABSENT) Optional<List<Double>> passbandNm,
        @JsonUnwrapped FrameObject.Times times,
        int width,
        int height,
        String depth,
        Header header,
        @JsonInclude(JsonInclude.Include.NON_ABSENT) Optional<AspectObject> ephemeris,
        @JsonInclude(JsonInclude.Include.NON_ABSENT) Optional<FrameObject.FitObject> disk,
        List<Message> warnings) {

    static InspectionObject of(Inspection i) {
        FrameHead head = i.frame().head();
        Optional<Band> band = i.frame().band().band();
        return new InspectionObject(
                head.file().toString(),
                band.map(Band::name).orElse("RGB"),
                i.frame().band().source(),
                band.map(b -> List.of(b.passband().fromNm(), b.passband().toNm())),
                FrameObject.Times.of(i.frame().timing()),
                head.width(),
                head.height(),
                head.depth(),
                Header.of(head.geometry(), i.aspect()),
                i.aspect().map(AspectObject::of),
                i.disk().map(d -> FrameObject.FitObject.of(d, d.disk())),
                i.notes());
    }

    /** How a frame lies on the sky by its header. */
    record Header(
            OptionalDouble scaleArcsecPerPx,
            OptionalDouble celestialNorthDeg,
            OptionalDouble northAngleDeg,
            Optional<Boolean> mirrored,
            String scaleSource,
            String northSource) {
        static Header of(HeaderGeometry g, Optional<Aspect> aspect) {
            return new Header(
                    g.scaleArcsecPerPx(),
                    g.celestialNorthDeg(),
                    aspect.map(a -> g.northAngleDeg(a.poleAngleDeg())).orElse(OptionalDouble.empty()),
                    g.mirrored(),
                    g.scaleSource(),
                    g.northSource());
        }
    }
}

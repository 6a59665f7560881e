package org.epochrome.session.sessionfile;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import java.util.List;
import java.util.Map;
import org.epochrome.session.recipe.Alignment;
import org.epochrome.session.recipe.Assignment;
import org.epochrome.session.recipe.Corrections;
import org.epochrome.session.recipe.Setup;
import org.epochrome.session.report.Outputs;
import org.epochrome.session.schedule.Turning;

/** The keys of a session file, in their order; docs/session-file.md says what they mean. What is missing is null. */
final class SessionSchema {
    /** What says that a JSON file is a session. */
    static final String FORMAT = "epochrome-session";

    static final int VERSION = 1;

    private SessionSchema() {}

    @JsonInclude(JsonInclude.Include.NON_NULL)
    @JsonPropertyOrder({"format", "version"})
    record Root(
            String format,
            Integer version,
            String tool,
            String body,
            String epoch,
            Site site,
            Air air,
            Setup setup,
            Corrections corrections,
            Alignment alignment,
            Assignment assignment,
            Clock clock,
            Map<String, List<Double>> passbandsNm,
            String encoding,
            List<Frame> frames,
            Look look,
            Outputs outputs) {}

    record Site(Double latitudeDeg, Double longitudeDeg, Double heightM) {}

    record Air(Double pressureHpa, Double temperatureC, Double relativeHumidity) {}

    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Setup(Double northDeg, String mirrored, Double scaleArcsecPerPx, String mount) {}

    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Corrections(
            String rotationSystem,
            Double rotationPeriodDays,
            Boolean turn,
            Boolean dispersion,
            Boolean airFlattening,
            Boolean unsmear,
            Boolean moons,
            String light,
            List<List<Double>> response) {}

    record Alignment(List<String> witnesses, Map<String, List<Double>> shiftsPx, Boolean freeScale) {}

    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Assignment(String red, String green, String blue, String luminance) {}

    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Clock(String meaning, String exposure, String utcOffset) {}

    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Frame(
            String file,
            String band,
            String start,
            String end,
            String source,
            Boolean mirrored,
            String encoding,
            Boolean leftOut,
            Disk disk,
            Long bytes,
            String sha256) {}

    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Disk(Double x, Double y, Double equatorialRadiusPx, Double northAngleDeg) {}

    record Look(White white, Detail detail, Tone tone, Framing framing) {}

    @JsonInclude(JsonInclude.Include.NON_NULL)
    record White(String balance, List<Double> gains) {}

    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Detail(
            Double deblur,
            Integer iterations,
            Double smoothing,
            Double gain,
            Double peakPx,
            Double peakArcsec,
            Double octaves,
            Double threshold,
            String of) {}

    record Tone(Double brightness, Double black, Double contrast, Double saturation) {}

    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Framing(String orientation, Double margin, Double enlarge, List<Integer> canvas, Boolean caption) {}

    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Outputs(List<String> pictures, Integer tiffBits, List<String> reports, GlobeMap map, Turning turning) {}

    @JsonInclude(JsonInclude.Include.NON_NULL)
    record GlobeMap(String file, Integer widthPx) {}

    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Turning(String file, String from, String until, Integer pictures) {}
}

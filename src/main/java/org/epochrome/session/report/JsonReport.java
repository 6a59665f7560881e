package org.epochrome.session.report;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.epochrome.colour.finish.Look;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Site;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.product.Provenance;

/** Reports as JSON: stable keys, pixels and degrees, null where nothing is known. */
public final class JsonReport {
    private JsonReport() {}

    /**
     * The report of a combination.
     *
     * @param look how its pictures were finished
     */
    public static String of(Combination c, Look look, String version) {
        return JsonText.of(CombinationReport.of(c, look, version));
    }

    /** The report of an aspect, with what the user should know, a sentence each. */
    public static String of(Aspect a, List<String> warnings, String version) {
        return JsonText.of(
                new OfAspect(Provenance.TOOL, version, a.body(), a.utc(), a.site(), AspectObject.of(a), warnings));
    }

    /** The report of frames that were only looked at. */
    public static String of(List<Inspection> inspections, String version) {
        return JsonText.of(new OfFrames(
                Provenance.TOOL,
                version,
                inspections.stream().map(InspectionObject::of).toList()));
    }

    private record OfAspect(
            String tool,
            String version,
            Body body,
            Instant epoch,
            Optional<Site> site,
            AspectObject ephemeris,
            List<String> warnings) {}

    private record OfFrames(String tool, String version, List<InspectionObject> frames) {}
}

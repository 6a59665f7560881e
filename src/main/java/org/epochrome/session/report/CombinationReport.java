package org.epochrome.session.report;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.epochrome.colour.Gains;
import org.epochrome.colour.finish.Look;
import org.epochrome.disk.Disk;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Site;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.product.Finishing;
import org.epochrome.session.product.Provenance;
import org.epochrome.session.recipe.Assignment;
import org.epochrome.session.sessionfile.SessionFile;
import org.epochrome.text.Message;

/** The report of a combination. */
record CombinationReport(
        String tool,
        String version,
        Body body,
        Instant epoch,
        Optional<Site> site,
        Output output,
        Optional<List<Law>> rotation,
        ObjectNode look,
        Assignment assign,
        Map<String, Covered> coverage,
        List<FrameObject> frames,
        List<MoonObject> moons,
        QualityObject quality,
        List<Message> warnings) {

    /**
     * Reports a combination.
     *
     * @param look how its pictures were finished
     */
    static CombinationReport of(Combination c, Look look, String version) {
        return new CombinationReport(
                Provenance.TOOL,
                version,
                c.recipe().body(),
                c.epoch(),
                c.recipe().place().site(),
                new Output(c.cube().width(), c.cube().height(), c.disk(), AspectObject.of(c.aspect())),
                c.recipe().corrections().turn() ? Optional.of(laws(c)) : Optional.empty(),
                look(c, look),
                c.recipe().assignment(),
                coverage(c),
                c.frames().stream().map(FrameObject::of).toList(),
                c.moons().stream().map(m -> MoonObject.of(m, c)).toList(),
                QualityObject.of(c),
                c.warnings());
    }

    /** By which laws which bands were turned. */
    private static List<Law> laws(Combination c) {
        return c.rotationLaws().entrySet().stream()
                .map(e -> new Law(e.getValue(), e.getKey().name(), e.getKey().source()))
                .toList();
    }

    /** How finished pictures look, by the keys of session files, and the gains that came of it. */
    private static ObjectNode look(Combination c, Look look) {
        ObjectNode node = SessionFile.tree(look);
        Gains gains = Finishing.gains(c, look);
        ((ObjectNode) node.get("white")).putPOJO("applied", new Applied(gains.red(), gains.green(), gains.blue()));
        return node;
    }

    /** By band: frames that cover a pixel of the inner disk. */
    private static Map<String, Covered> coverage(Combination c) {
        Map<String, Covered> covered = new LinkedHashMap<>();
        c.coverage().forEach((band, coverage) -> covered.put(band, Covered.of(coverage, c.disk())));
        return covered;
    }

    /** The picture. */
    record Output(int width, int height, Disk disk, AspectObject ephemeris) {}

    /** A law of rotation and the bands that were turned by it. */
    record Law(List<String> bands, String law, String source) {}

    /** The gains of a white balance. */
    record Applied(double red, double green, double blue) {}
}

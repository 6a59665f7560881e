package org.epochrome.session.report;

import static org.epochrome.session.report.JsonPieces.disk;
import static org.epochrome.session.report.JsonPieces.ephemeris;
import static org.epochrome.session.report.JsonPieces.errors;
import static org.epochrome.session.report.JsonPieces.fitted;
import static org.epochrome.session.report.JsonPieces.offset;
import static org.epochrome.session.report.JsonPieces.put;
import static org.epochrome.session.report.JsonPieces.shift;
import static org.epochrome.session.report.JsonPieces.site;
import static org.epochrome.session.report.JsonPieces.strings;
import static org.epochrome.session.report.JsonPieces.times;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.epochrome.align.Limb;
import org.epochrome.align.SharedError;
import org.epochrome.colour.Gains;
import org.epochrome.colour.finish.Look;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.image.blur.Smear;
import org.epochrome.moon.FoundMoon;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.combine.Combination.FrameResult;
import org.epochrome.session.product.Finishing;
import org.epochrome.session.product.Provenance;
import org.epochrome.session.recipe.Assignment;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.session.recipe.PixelOffset;
import org.epochrome.session.schedule.AtmosphericDispersion;
import org.epochrome.session.sessionfile.SessionFile;
import org.epochrome.text.Message;
import org.epochrome.time.UtcText;

/** The report as JSON: stable keys, pixels and degrees, null where nothing is known. */
public final class JsonReport {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private JsonReport() {}

    /**
     * The report of a combination.
     *
     * @param look how its pictures were finished
     */
    public static String of(Combination c, Look look, String version) {
        ObjectNode root = head(version);
        root.put("body", c.recipe().body().displayName());
        root.put("epoch", UtcText.format(c.epoch()));
        root.set("site", site(c.recipe().place().site()));
        ObjectNode output = root.putObject("output");
        output.put("width", c.cube().width());
        output.put("height", c.cube().height());
        output.set("disk", disk(c.disk()));
        output.set("ephemeris", ephemeris(c.aspect()));
        root.set("rotation", rotation(c));
        root.set("look", look(c, look));
        root.set("assign", assignment(c.recipe().assignment()));
        root.set("coverage", coverage(c));
        ArrayNode frames = root.putArray("frames");
        c.frames().forEach(f -> frames.add(frame(f)));
        root.set("moons", moons(c));
        quality(root.putObject("quality"), c.quality());
        strings(root, "warnings", Message.texts(c.warnings()));
        return text(root);
    }

    private static void quality(ObjectNode node, Combination.Quality quality) {
        ObjectNode fringe = node.putObject("fringePx");
        put(fringe, "before", quality.before().px());
        put(fringe, "beforeSigma", quality.before().sigmaPx());
        put(fringe, "after", quality.after().px());
        put(fringe, "sigma", quality.after().sigmaPx());
        node.put("verdict", quality.verdict());
    }

    /** The report of an aspect, with what the user should know, a sentence each. */
    public static String of(Aspect aspect, List<String> warnings, String version) {
        ObjectNode root = head(version);
        root.put("body", aspect.body().displayName());
        root.put("epoch", UtcText.format(aspect.utc()));
        root.set("site", site(aspect.site()));
        root.set("ephemeris", ephemeris(aspect));
        strings(root, "warnings", warnings);
        return text(root);
    }

    /** The report of frames that were only looked at. */
    public static String of(List<Inspection> inspections, String version) {
        ObjectNode root = head(version);
        ArrayNode frames = root.putArray("frames");
        for (Inspection i : inspections) {
            ObjectNode node = frames.addObject();
            node.put("file", i.frame().head().file().toString());
            node.put("band", i.frame().band().band().map(b -> b.name()).orElse("RGB"));
            node.put("bandSource", i.frame().band().source());
            i.frame().band().band().ifPresent(b -> {
                ArrayNode passband = node.putArray("passbandNm");
                passband.add(b.passband().fromNm());
                passband.add(b.passband().toNm());
            });
            times(node, i.frame().timing());
            node.put("width", i.frame().head().width());
            node.put("height", i.frame().head().height());
            node.put("depth", i.frame().head().depth());
            node.set("header", JsonPieces.header(i.frame().head().geometry(), i.aspect()));
            i.aspect().ifPresent(a -> node.set("ephemeris", ephemeris(a)));
            i.disk().ifPresent(d -> node.set("disk", fitted(d, d.disk())));
            strings(node, "warnings", Message.texts(i.notes()));
        }
        return text(root);
    }

    /** By which laws which bands were turned; null if they were not. */
    private static JsonNode rotation(Combination c) {
        if (!c.recipe().corrections().turn()) {
            return NODES.nullNode();
        }
        ArrayNode laws = NODES.arrayNode();
        c.rotationLaws().forEach((law, bands) -> {
            ObjectNode node = laws.addObject();
            strings(node, "bands", bands);
            node.put("law", law.name());
            node.put("source", law.source());
        });
        return laws;
    }

    private static ArrayNode moons(Combination c) {
        ArrayNode moons = NODES.arrayNode();
        for (FoundMoon m : c.moons()) {
            ObjectNode node = moons.addObject();
            node.put("name", m.name().orElse(null));
            node.put("kind", m.shadow() ? "shadow" : "moon");
            node.put("where", m.where().words());
            node.put("foundBy", m.name().isPresent() ? "theory" : "motion");
            put(node, "x", m.x());
            put(node, "y", m.y());
            put(node, "radiusPx", m.radiusPx());
            ArrayNode frames = node.putArray("frames");
            for (FoundMoon.InFrame f : m.frames()) {
                Exposure exposure = c.frames().get(f.exposure()).exposure();
                ObjectNode in = frames.addObject();
                in.put("file", exposure.frame().head().file().toString());
                in.put("band", exposure.band().name());
                put(in, "x", f.x());
                put(in, "y", f.y());
                put(in, "level", f.level());
                put(in, "flux", f.flux());
                ObjectNode residual = in.putObject("residualPx");
                put(residual, "x", f.offX());
                put(residual, "y", f.offY());
                put(in, "sigmaPx", f.sigmaPx());
                in.put("plain", f.plain());
            }
        }
        return moons;
    }

    private static ObjectNode assignment(Assignment bands) {
        ObjectNode node = NODES.objectNode();
        node.put("red", bands.red());
        node.put("green", bands.green());
        node.put("blue", bands.blue());
        node.put("luminance", bands.luminance().orElse(null));
        return node;
    }

    /** By band: frames that cover a pixel of the inner disk, at least, at most and in the mean. */
    private static ObjectNode coverage(Combination c) {
        ObjectNode node = NODES.objectNode();
        c.coverage().forEach((band, coverage) -> {
            Covered covered = Covered.of(coverage, c.disk());
            ObjectNode of = node.putObject(band);
            put(of, "leastFrames", covered.least());
            put(of, "mostFrames", covered.most());
            put(of, "meanFrames", covered.mean());
        });
        return node;
    }

    /** How finished pictures look, by the keys of session files, and the gains that came of it. */
    private static ObjectNode look(Combination c, Look look) {
        ObjectNode node = SessionFile.tree(look);
        Gains gains = Finishing.gains(c, look);
        ObjectNode applied = ((ObjectNode) node.get("white")).putObject("applied");
        put(applied, "red", gains.red());
        put(applied, "green", gains.green());
        put(applied, "blue", gains.blue());
        return node;
    }

    private static ObjectNode head(String version) {
        ObjectNode root = NODES.objectNode();
        root.put("tool", Provenance.TOOL);
        root.put("version", version);
        return root;
    }

    private static ObjectNode frame(FrameResult f) {
        ObjectNode node = NODES.objectNode();
        node.put("file", f.exposure().frame().head().file().toString());
        node.put("band", f.exposure().band().name());
        times(node, f.exposure().frame().timing());
        node.set("ephemeris", ephemeris(f.exposure().aspect()));
        node.set("disk", fitted(f.limb(), f.disk()));
        put(node, "rotationDeg", f.rotationDeg());
        node.set("shiftPx", offset(Optional.of(f.correction())));
        node.set("detailPx", shift(f.witnesses().detail()));
        node.set("witnesses", witnesses(f.witnesses()));
        node.set("predictedDispersionPx", offset(f.dispersion()));
        node.set("smear", smear(f));
        put(node, "weight", f.weight());
        strings(node, "warnings", Message.texts(f.warnings()));
        return node;
    }

    private static JsonNode shared(Limb limb, SharedError.Kind kind) {
        return offset(limb.shared().stream()
                .filter(s -> s.kind() == kind)
                .findFirst()
                .map(s -> new PixelOffset(s.x(), s.y())));
    }

    private static ObjectNode witnesses(Combination.Witnesses w) {
        ObjectNode node = NODES.objectNode();
        ObjectNode limb = node.putObject("limb");
        put(limb, "sigmaPx", w.limb().sigmaPx());
        limb.set("byNorthPx", shared(w.limb(), SharedError.Kind.NORTH));
        limb.set("bySizePx", shared(w.limb(), SharedError.Kind.SIZE));
        limb.set(
                "byTimePx",
                offset(Optional.of(new PixelOffset(w.limb().ownX(), w.limb().ownY()))));
        node.set("detail", shift(w.detail()));
        node.set("physics", shift(w.physics()));
        node.set("place", errors(w.place()));
        ObjectNode apart = node.putObject("agreement");
        put(apart, "limbToDetail", w.limbToDetail());
        put(apart, "limbToPhysics", w.limbToPhysics());
        ArrayNode leftOut = node.putArray("leftOut");
        w.leftOut().stream().sorted().forEach(out -> leftOut.add(out.name().toLowerCase(Locale.ROOT)));
        node.set("nudgePx", offset(Optional.of(w.nudge())));
        return node;
    }

    private static ObjectNode smear(FrameResult f) {
        ObjectNode node = NODES.objectNode();
        put(node, "lengthPx", f.smear().lengthPx());
        put(
                node,
                "lengthArcsec",
                f.smear().lengthPx()
                        * AtmosphericDispersion.arcsecPerPx(f.exposure().aspect(), f.disk()));
        put(
                node,
                "directionDeg",
                f.smear() == Smear.NONE ? Double.NaN : f.smear().directionDeg());
        return node;
    }

    private static String text(ObjectNode root) {
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
        DefaultIndenter lines = new DefaultIndenter("  ", "\n");
        printer.indentObjectsWith(lines);
        printer.indentArraysWith(lines);
        try {
            return new ObjectMapper().writer(printer).writeValueAsString(root) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("A report of plain values can always be written.", e);
        }
    }
}

package org.epochrome.session;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.epochrome.align.Shift;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Site;
import org.epochrome.image.Plane;
import org.epochrome.image.Smear;
import org.epochrome.session.Combination.FrameResult;
import org.epochrome.time.UtcText;

/** The report as JSON: stable keys, pixels and degrees, null where nothing is known. */
public final class JsonReport {
    /** Name of the program as reports and files give it. */
    public static final String TOOL = "Epochrome";

    /** Part of the radius that counts as the inner disk. */
    private static final double INNER = 0.85;

    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private JsonReport() {}

    /** The report of a combination. */
    public static String of(Combination c, String version) {
        ObjectNode root = head(version);
        root.put("body", c.recipe().body().displayName());
        root.put("epoch", UtcText.format(c.epoch()));
        root.set("site", site(c.recipe().place().site()));
        ObjectNode output = root.putObject("output");
        output.put("width", c.cube().width());
        output.put("height", c.cube().height());
        output.set("disk", disk(c.disk()));
        output.set("ephemeris", ephemeris(c.aspect()));
        root.set("assign", assignment(c.recipe().assignment()));
        root.set("coverage", coverage(c));
        ArrayNode frames = root.putArray("frames");
        c.frames().forEach(f -> frames.add(frame(f)));
        ObjectNode fringe = root.putObject("quality").putObject("fringePx");
        put(fringe, "before", c.quality().fringeBeforePx());
        put(fringe, "after", c.quality().fringeAfterPx());
        strings(root, "warnings", c.warnings());
        return text(root);
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
            times(node, i.frame().timing());
            node.put("width", i.frame().head().width());
            node.put("height", i.frame().head().height());
            node.put("depth", i.frame().head().depth());
            i.aspect().ifPresent(a -> node.set("ephemeris", ephemeris(a)));
            i.disk().ifPresent(d -> node.set("disk", fitted(d, d.disk())));
            strings(node, "warnings", i.notes());
        }
        return text(root);
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
        double reach = INNER * c.disk().equatorialRadiusPx();
        c.coverage().forEach((band, coverage) -> {
            Plane frames = coverage.frames();
            DoubleSummaryStatistics counts = new DoubleSummaryStatistics();
            for (int y = 0; y < frames.height(); y++) {
                for (int x = 0; x < frames.width(); x++) {
                    if (Math.hypot(x - c.disk().x(), y - c.disk().y()) < reach) {
                        counts.accept(frames.at(x, y));
                    }
                }
            }
            ObjectNode of = node.putObject(band);
            put(of, "leastFrames", counts.getMin());
            put(of, "mostFrames", counts.getMax());
            put(of, "meanFrames", counts.getAverage());
        });
        return node;
    }

    private static ObjectNode head(String version) {
        ObjectNode root = NODES.objectNode();
        root.put("tool", TOOL);
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
        strings(node, "warnings", f.warnings());
        return node;
    }

    private static void times(ObjectNode node, org.epochrome.io.Timing timing) {
        node.put("start", UtcText.format(timing.span().start()));
        node.put("end", UtcText.format(timing.span().end()));
        node.put("mid", UtcText.format(timing.span().mid()));
        node.put("timeSource", timing.source());
    }

    private static ObjectNode ephemeris(Aspect a) {
        ObjectNode node = NODES.objectNode();
        ObjectNode meridians = node.putObject("centralMeridianDeg");
        a.centralMeridianDeg().entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .forEach(e -> put(meridians, e.getKey().key(), e.getValue()));
        put(node, "subEarthLatitudeDeg", a.subEarthLatitudeDeg());
        put(node, "subEarthLatitudeCentricDeg", a.subEarthLatitudeCentricDeg());
        put(node, "subSolarLatitudeDeg", a.subSolarLatitudeDeg());
        put(node, "subSolarLatitudeCentricDeg", a.subSolarLatitudeCentricDeg());
        put(node, "subSolarLongitudeDeg", a.subSolarLongitudeDeg());
        put(node, "poleAngleDeg", a.poleAngleDeg());
        put(node, "sunPositionAngleDeg", a.sunPositionAngleDeg());
        put(node, "phaseAngleDeg", a.phaseAngleDeg());
        put(node, "phaseDefectArcsec", a.phaseDefectArcsec());
        put(node, "phaseDefectAngleDeg", a.phaseDefectAngleDeg());
        put(node, "distanceAu", a.distanceAu());
        put(node, "sunDistanceAu", a.sunDistanceAu());
        put(node, "lightTimeS", a.lightTimeS());
        put(node, "equatorialDiameterArcsec", a.equatorialDiameterArcsec());
        put(node, "polarDiameterArcsec", a.polarDiameterArcsec());
        put(node, "rightAscensionDeg", a.rightAscensionDeg());
        put(node, "declinationDeg", a.declinationDeg());
        put(node, "elongationDeg", a.elongationDeg());
        a.horizontal().ifPresent(h -> {
            put(node, "altitudeDeg", h.altitudeDeg());
            put(node, "azimuthDeg", h.azimuthDeg());
            put(node, "parallacticAngleDeg", h.parallacticAngleDeg());
        });
        return node;
    }

    private static ObjectNode disk(Disk disk) {
        ObjectNode node = NODES.objectNode();
        put(node, "x", disk.x());
        put(node, "y", disk.y());
        put(node, "equatorialRadiusPx", disk.equatorialRadiusPx());
        put(node, "northAngleDeg", disk.northAngleDeg());
        node.put("mirrored", disk.mirrored());
        return node;
    }

    private static ObjectNode fitted(FittedDisk fit, Disk disk) {
        ObjectNode node = disk(disk);
        put(node, "sigmaPx", fit.centreSigmaPx());
        put(node, "radiusSigmaPx", fit.radiusSigmaPx());
        put(node, "northSigmaDeg", fit.northSigmaDeg());
        ObjectNode limb = node.putObject("limb");
        put(limb, "x", fit.disk().x());
        put(limb, "y", fit.disk().y());
        put(node, "minnaert", fit.shading().minnaert());
        put(node, "blurPx", fit.shading().blurPx());
        put(node, "background", fit.background());
        put(node, "brightness", fit.brightness());
        return node;
    }

    private static ObjectNode witnesses(Combination.Witnesses w) {
        ObjectNode node = NODES.objectNode();
        put(node.putObject("limb"), "sigmaPx", w.limbSigmaPx());
        node.set("detail", shift(w.detail()));
        node.set("physics", shift(w.physics()));
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
                f.smear().lengthPx() * Sky.arcsecPerPx(f.exposure().aspect(), f.disk()));
        put(
                node,
                "directionDeg",
                f.smear() == Smear.NONE ? Double.NaN : f.smear().directionDeg());
        return node;
    }

    private static ObjectNode shift(Shift s) {
        if (!s.known()) {
            return null;
        }
        ObjectNode node = NODES.objectNode();
        put(node, "x", s.x());
        put(node, "y", s.y());
        put(node, "sigmaX", s.sigmaX());
        put(node, "sigmaY", s.sigmaY());
        return node;
    }

    private static ObjectNode offset(Optional<PixelOffset> offset) {
        return offset.map(o -> {
                    ObjectNode node = NODES.objectNode();
                    put(node, "x", o.x());
                    put(node, "y", o.y());
                    return node;
                })
                .orElse(null);
    }

    private static ObjectNode site(Optional<Site> site) {
        return site.map(s -> {
                    ObjectNode node = NODES.objectNode();
                    put(node, "latitudeDeg", s.latitudeDeg());
                    put(node, "longitudeDeg", s.longitudeDeg());
                    put(node, "heightM", s.heightM());
                    return node;
                })
                .orElse(null);
    }

    private static void strings(ObjectNode node, String key, List<String> texts) {
        ArrayNode array = node.putArray(key);
        texts.forEach(array::add);
    }

    /** Numbers to seven decimals, which is finer than anything is known; JSON has no NaN. */
    private static void put(ObjectNode node, String key, double value) {
        if (Double.isFinite(value)) {
            node.put(key, Math.round(value * 1e7) / 1e7);
        } else {
            node.putNull(key);
        }
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

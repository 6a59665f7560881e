package org.epochrome.session.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.epochrome.align.Shift;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Site;
import org.epochrome.io.head.HeaderGeometry;
import org.epochrome.session.recipe.PixelOffset;
import org.epochrome.time.UtcText;

/** What reports have in common: times, aspects, disks, shifts. */
final class JsonPieces {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private JsonPieces() {}

    static void times(ObjectNode node, org.epochrome.io.identify.Timing timing) {
        node.put("start", UtcText.format(timing.span().start()));
        node.put("end", UtcText.format(timing.span().end()));
        node.put("mid", UtcText.format(timing.span().mid()));
        node.put("timeSource", timing.source().toString());
        put(node, "timeSigmaS", timing.span().midSigmaS());
    }

    static ObjectNode ephemeris(Aspect a) {
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

    static ObjectNode disk(Disk disk) {
        ObjectNode node = NODES.objectNode();
        put(node, "x", disk.x());
        put(node, "y", disk.y());
        put(node, "equatorialRadiusPx", disk.equatorialRadiusPx());
        put(node, "northAngleDeg", disk.northAngleDeg());
        node.put("mirrored", disk.mirrored());
        return node;
    }

    static ObjectNode fitted(FittedDisk fit, Disk disk) {
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

    static ObjectNode shift(Shift s) {
        if (!s.known()) {
            return null;
        }
        ObjectNode node = NODES.objectNode();
        put(node, "x", s.x());
        put(node, "y", s.y());
        node.setAll(errors(s));
        return node;
    }

    static ObjectNode errors(Shift s) {
        ObjectNode node = NODES.objectNode();
        put(node, "sigmaX", s.sigmaX());
        put(node, "sigmaY", s.sigmaY());
        put(node, "covariance", s.covariance());
        return node;
    }

    static ObjectNode offset(Optional<PixelOffset> offset) {
        return offset.map(o -> {
                    ObjectNode node = NODES.objectNode();
                    put(node, "x", o.x());
                    put(node, "y", o.y());
                    return node;
                })
                .orElse(null);
    }

    static ObjectNode site(Optional<Site> site) {
        return site.map(s -> {
                    ObjectNode node = NODES.objectNode();
                    put(node, "latitudeDeg", s.latitudeDeg());
                    put(node, "longitudeDeg", s.longitudeDeg());
                    put(node, "heightM", s.heightM());
                    return node;
                })
                .orElse(null);
    }

    /** How a frame lies on the sky by its header; null where that says nothing. */
    static ObjectNode header(HeaderGeometry geometry, Optional<Aspect> aspect) {
        ObjectNode node = NODES.objectNode();
        put(node, "scaleArcsecPerPx", geometry.scaleArcsecPerPx().orElse(Double.NaN));
        put(node, "celestialNorthDeg", geometry.celestialNorthDeg().orElse(Double.NaN));
        put(
                node,
                "northAngleDeg",
                aspect.map(a -> geometry.northAngleDeg(a.poleAngleDeg()).orElse(Double.NaN))
                        .orElse(Double.NaN));
        node.put("mirrored", geometry.mirrored().orElse(null));
        node.put("scaleSource", geometry.scaleSource());
        node.put("northSource", geometry.northSource());
        return node;
    }

    static void strings(ObjectNode node, String key, List<String> texts) {
        ArrayNode array = node.putArray(key);
        texts.forEach(array::add);
    }

    /** Numbers to seven decimals, which is finer than anything is known; JSON has no NaN. */
    static void put(ObjectNode node, String key, double value) {
        if (Double.isFinite(value)) {
            node.put(key, Math.round(value * 1e7) / 1e7);
        } else {
            node.putNull(key);
        }
    }
}

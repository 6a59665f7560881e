package org.epochrome.evidence;

import static org.epochrome.evidence.Html.number;
import static org.epochrome.evidence.Labels.band;
import static org.epochrome.evidence.Labels.clock;

import java.util.ArrayList;
import java.util.List;
import org.epochrome.colour.finish.Look;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.product.MapFile;

/** Aspect of the planet, and what of it was seen. */
final class AspectSections {
    private static final int MAP_PX = 720;

    private final Combination c;
    private final Look look;

    AspectSections(Combination combination, Look look) {
        this.c = combination;
        this.look = look;
    }

    Markup aspects() {
        List<RotationSystem> systems =
                c.recipe().body().systems().stream().sorted().toList();
        List<String> heads = new ArrayList<>(List.of("", "UTC"));
        systems.forEach(s -> heads.add("CM" + (s == RotationSystem.SINGLE ? "" : " " + s.key())));
        heads.addAll(List.of("sub-Earth lat.", "sub-solar lat.", "P", "phase", "diameter", "altitude"));
        List<List<Object>> rows = new ArrayList<>();
        rows.add(aspect(Markup.element("b", "epoch"), c.aspect(), systems));
        c.frames().forEach(f -> rows.add(aspect(band(f), f.exposure().aspect(), systems)));
        return Html.section("Aspect of the planet", Html.table(heads, rows));
    }

    private static List<Object> aspect(Markup who, Aspect a, List<RotationSystem> systems) {
        List<Object> row = new ArrayList<>(List.of(who, clock(a.utc())));
        systems.forEach(s -> row.add(number("%.2f\u00b0", a.centralMeridianDeg(s))));
        row.add(number("%.2f\u00b0", a.subEarthLatitudeDeg()));
        row.add(number("%.2f\u00b0", a.subSolarLatitudeDeg()));
        row.add(number("%.2f\u00b0", a.poleAngleDeg()));
        row.add(number("%.1f\u00b0", a.phaseAngleDeg()));
        row.add(number("%.2f\u2033", a.equatorialDiameterArcsec()));
        row.add(a.horizontal().map(h -> number("%.1f\u00b0", h.altitudeDeg())).orElse("\u2013"));
        return row;
    }

    Markup surface() {
        RotationSystem system = MapFile.system(c);
        return Html.section(
                "Map of the globe",
                Html.figure(
                        Html.picture(MapFile.onPaper(c, look, MAP_PX), "Map of the globe"),
                        "Shading removed. Latitude planetographic, north up; longitude "
                                + (system == RotationSystem.SINGLE ? "" : system.key() + " ")
                                + (c.recipe().body().prograde()
                                        ? "from 360\u00b0 on the left to 0\u00b0"
                                        : "from 0\u00b0 on the left to 360\u00b0")
                                + " on the right. White areas were out of sight or seen too obliquely."));
    }
}

package org.epochrome.session.report;

import java.util.List;
import java.util.Optional;
import org.epochrome.moon.FoundMoon;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.session.recipe.PixelOffset;

/** A moon or shadow in the report of a combination. */
record MoonObject(
        Optional<String> name,
        String kind,
        String where,
        String foundBy,
        double x,
        double y,
        double radiusPx,
        List<InFrame> frames) {

    static MoonObject of(FoundMoon m, Combination c) {
        return new MoonObject(
                m.name(),
                m.shadow() ? "shadow" : "moon",
                m.where().words(),
                m.name().isPresent() ? "theory" : "motion",
                m.x(),
                m.y(),
                m.radiusPx(),
                m.frames().stream()
                        .map(f -> InFrame.of(f, c.frames().get(f.exposure()).exposure()))
                        .toList());
    }

    /** It in one frame. */
    record InFrame(
            String file,
            String band,
            double x,
            double y,
            double level,
            double flux,
            PixelOffset residualPx,
            double sigmaPx,
            boolean plain) {
        static InFrame of(FoundMoon.InFrame f, Exposure exposure) {
            return new InFrame(
                    exposure.frame().head().file().toString(),
                    exposure.band().name(),
                    f.x(),
                    f.y(),
                    f.level(),
                    f.flux(),
                    new PixelOffset(f.offX(), f.offY()),
                    f.sigmaPx(),
                    f.plain());
        }
    }
}

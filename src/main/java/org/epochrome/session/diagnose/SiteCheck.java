package org.epochrome.session.diagnose;

import java.util.List;
import java.util.Optional;
import org.epochrome.disk.PassbandWidth;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.ephemeris.Site;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.register.RegisteredFrames;
import org.epochrome.session.schedule.WorkingFrame;
import org.epochrome.session.verdict.Confidence;
import org.epochrome.session.verdict.Diagnosis;
import org.epochrome.session.verdict.Remedy;
import org.epochrome.text.Message;

/** Whether the planet can have been seen from the site at the stated times, and through as much air. */
final class SiteCheck {
    /** Below this altitude, degrees, nobody takes pictures. */
    private static final double LEAST_ALTITUDE_DEG = 3;
    /** A blur by dispersion that differs from the predicted one by so many standard errors contradicts it. */
    private static final double CONTRADICTS = 2.6;
    /** Systematic part of that error, as a part of the blur. */
    private static final double AIR_PART = 0.04;
    /** Another site must predict a blur that is so many times as long or short. */
    private static final double CLEAR = 1.5;

    private SiteCheck() {}

    /** A diagnosis if the site is probably wrong. */
    static Optional<Diagnosis> of(RegisteredFrames registered, Recipe recipe) {
        Optional<Site> stated = recipe.place().site();
        if (stated.isEmpty()) {
            return Optional.empty();
        }
        WorkingFrame reference = registered.frames().reference();
        double altitude = altitude(reference.exposure().aspect());
        List<Site> others = otherSigns(stated.get());
        if (altitude < LEAST_ALTITUDE_DEG) {
            Optional<Site> seen = others.stream()
                    .filter(s -> altitude(at(reference, s)) > LEAST_ALTITUDE_DEG)
                    .findFirst();
            return Optional.of(new Diagnosis(
                    Diagnosis.Cause.SITE,
                    List.of(),
                    seen.map(s -> Message.of(
                                    "diagnosis.siteBelow",
                                    altitude,
                                    s.latitudeDeg(),
                                    s.longitudeDeg(),
                                    altitude(at(reference, s))))
                            .orElse(Message.of("diagnosis.below", altitude)),
                    Confidence.LIKELY,
                    seen.map(Remedy.OtherSite::new)));
        }
        double sense = registered.frames().all().stream()
                .mapToDouble(f -> significance(f.disk().passband()))
                .reduce(0, (a, b) -> Math.abs(a) >= Math.abs(b) ? a : b);
        if (Math.abs(sense) < CONTRADICTS) {
            return Optional.empty();
        }
        return others.stream()
                .filter(s -> altitude(at(reference, s)) > LEAST_ALTITUDE_DEG)
                .filter(s -> {
                    double ratio = zenithTangent(altitude(at(reference, s))) / zenithTangent(altitude);
                    return sense < 0 ? ratio * CLEAR < 1 : ratio > CLEAR;
                })
                .findFirst()
                .map(s -> new Diagnosis(
                        Diagnosis.Cause.SITE,
                        List.of(),
                        Message.of("diagnosis.siteAir", s.latitudeDeg(), s.longitudeDeg()),
                        Confidence.POSSIBLE,
                        Optional.of(new Remedy.OtherSite(s))));
    }

    private static double significance(PassbandWidth width) {
        return width.known() ? width.widening() / Math.hypot(width.sigma(), AIR_PART) : 0;
    }

    /** The site with other signs of latitude and longitude. */
    private static List<Site> otherSigns(Site s) {
        return List.of(
                new Site(-s.latitudeDeg(), s.longitudeDeg(), s.heightM()),
                new Site(s.latitudeDeg(), -s.longitudeDeg(), s.heightM()),
                new Site(-s.latitudeDeg(), -s.longitudeDeg(), s.heightM()));
    }

    private static Aspect at(WorkingFrame frame, Site site) {
        return Ephemeris.aspect(
                frame.exposure().aspect().body(), frame.exposure().mid(), Optional.of(site));
    }

    private static double altitude(Aspect aspect) {
        return aspect.horizontal().orElseThrow().altitudeDeg();
    }

    private static double zenithTangent(double altitudeDeg) {
        return 1 / Math.tan(Math.toRadians(altitudeDeg));
    }
}

package org.epochrome.session;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleSupplier;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.epochrome.colour.ColourCube;
import org.epochrome.colour.Merge;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.Shading;
import org.epochrome.disk.Unsmear;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.job.Progress;
import org.epochrome.session.Registration.Registered;
import org.epochrome.time.LeapSeconds;
import org.epochrome.turn.Turned;

/** Runs a recipe: reads, fits, turns, registers and merges. */
public final class Combiner {
    private static final List<String> COLOURS = List.of("R", "G", "B");
    /** Apparent offset, in blurs, of the longest smear that moves all detail alike: of four blurs. */
    private static final double MOST_OFFSET = 0.03;
    /** Blur on the pixels on which detail is compared. */
    private static final double DETAIL_BLUR_PX = 1;
    /** The same where a tenth of a pixel will do. */
    private static final double ROUGH_BLUR_PX = 0.5;

    private static final float LEAST_WEIGHT = 0.05f;

    private final Recipe recipe;
    private final Schedule schedule;
    private final List<String> warnings = new ArrayList<>();

    public Combiner(Recipe recipe) {
        this.recipe = recipe;
        this.schedule = Schedule.of(recipe);
    }

    /** The instant that a recipe's picture will show. */
    public static Instant epoch(Recipe recipe) {
        return Schedule.of(recipe).epoch();
    }

    /**
     * Combines the frames.
     *
     * @throws SessionRefused if the recipe lacks something
     * @throws NoDiskInFrame if a frame shows no disk
     * @throws org.epochrome.io.FrameRefused if a frame cannot be read
     */
    public Combination combine(Progress progress) {
        checkBands();
        Sky sky = Sky.over(recipe);
        warnAboutTheSky(sky);
        progress.doing("reading");
        List<Plane> planes = each(i -> schedule.exposures().get(i).load());
        progress.at(0.1);
        Turning turning = new Turning(recipe, schedule);
        MoonsTakenOut bare = MoonsTakenOut.of(
                recipe,
                schedule,
                turning,
                new DiskFinder(recipe, schedule, sky),
                planes,
                warnings,
                progress.part(0.1, 0.55));
        planes = bare.planes();
        List<FittedDisk> limbs = bare.disks();
        Moons moons = bare.moons();
        List<FittedDisk> found = limbs;
        if (recipe.unsmear()) {
            progress.doing("undoing the smear within bands");
            List<Plane> drawn = planes;
            planes = each(i -> Unsmear.of(
                    drawn.get(i),
                    limbs.get(i),
                    Globe.of(schedule.exposures().get(i).aspect()),
                    progress));
            found = limbs.stream().map(FittedDisk::unsmeared).toList();
        }
        progress.doing("comparing detail");
        Details details = new Details(schedule, turning, planes, found, DETAIL_BLUR_PX, progress);
        List<Registered> registered =
                new Registration(schedule, warnings).register(details, found, progress.part(0.55, 0.75));
        List<FittedDisk> fits = registered.stream().map(Registered::fitted).toList();
        progress.doing("turning to the epoch");
        View view = turning.viewAtEpoch(fits.get(schedule.reference()));
        List<Turned> turned = turned(planes, fits, turning, moons, view, progress.part(0.75, 0.9));
        progress.doing("measuring the fringes");
        Fringe fringe = new Fringe(
                schedule,
                turning,
                planes,
                fits,
                details,
                new Details(schedule, turning, planes, found, ROUGH_BLUR_PX, progress));
        double[] apart = Stream.<DoubleSupplier>of(
                        () -> fringe.plain(progress), () -> fringe.result(recipe.turn(), progress))
                .parallel()
                .mapToDouble(DoubleSupplier::getAsDouble)
                .toArray();
        Combination.Quality quality = new Combination.Quality(apart[0], apart[1]);
        progress.at(0.95);
        progress.doing("merging");
        ColourCube cube = new ColourCube(
                merged("R", turned, fits, moons, view),
                merged("G", turned, fits, moons, view),
                merged("B", turned, fits, moons, view));
        progress.at(1);
        return new Combination(
                recipe,
                schedule.epoch(),
                schedule.aspect(),
                cube,
                view.disk(),
                results(limbs, registered, turning, sky),
                moons.results(),
                quality,
                List.copyOf(warnings));
    }

    private List<Plane> each(IntFunction<Plane> made) {
        return IntStream.range(0, schedule.exposures().size())
                .parallel()
                .mapToObj(made)
                .toList();
    }

    private void checkBands() {
        List<String> missing = COLOURS.stream()
                .filter(c -> schedule.exposures().stream()
                        .noneMatch(e -> e.band().name().equals(c)))
                .toList();
        if (!missing.isEmpty()) {
            throw new SessionRefused("a colour picture needs frames in R, G and B, but there is none in "
                    + String.join(" and ", missing) + "; add it, or say which frame it is by --red, --green or --blue");
        }
        schedule.exposures().stream()
                .map(e -> e.band().name())
                .filter(name -> !COLOURS.contains(name))
                .distinct()
                .forEach(name ->
                        warnings.add("Frames in " + name + " were fitted but are not part of the picture yet."));
    }

    private void warnAboutTheSky(Sky sky) {
        if (recipe.dispersion() && recipe.site().isEmpty()) {
            warnings.add(
                    "Without --site the atmosphere's dispersion is not known; shifts come from limb and detail alone.");
        } else if (recipe.dispersion() && !sky.knows(schedule.aspect())) {
            warnings.add("The planet stood too low for a trustworthy refraction; check site and times.");
        }
        if (!LeapSeconds.covers(schedule.epoch())) {
            warnings.add("The epoch lies outside the table of leap seconds (to "
                    + LeapSeconds.validUntil().toString().substring(0, 10)
                    + "); a newer leap second would move everything by a second, which is nothing to a planet's turn.");
        }
        if (schedule.aspect().nearSun()) {
            warnings.add("The planet stood within 30 degrees of the Sun: never point optics near the Sun without the"
                    + " safeguards that its maker and your local rules ask for.");
        }
    }

    private List<Turned> turned(
            List<Plane> planes, List<FittedDisk> fits, Turning turning, Moons moons, View view, Progress progress) {
        Plane target = planes.get(schedule.reference());
        List<Turned> result = new ArrayList<>();
        for (int i = 0; i < planes.size(); i++) {
            progress.check();
            result.add(turning.turn(
                    planes.get(i),
                    fits.get(i),
                    schedule.exposures().get(i).aspect(),
                    seen(view, fits.get(i)),
                    target.width(),
                    target.height(),
                    progress));
            moons.distrust(i, result.get(i), view);
            progress.at((i + 1.0) / planes.size());
        }
        return result;
    }

    /**
     * The view moved so that a band which dispersion smears lopsidedly seems to lie where the others do. A smear far longer
     * than the blur moves edges and fine detail differently, so it is moved no more than a moderate one.
     */
    private static View seen(View view, FittedDisk fit) {
        Shading shading = fit.shading().carried(fit.disk(), view.disk());
        double most = MOST_OFFSET * shading.blurPx();
        double offset = Math.max(-most, Math.min(most, shading.smear().apparentOffsetPx(shading.blurPx())));
        double direction = Math.toRadians(shading.smear().directionDeg());
        return new View(view.globe(), view.disk().movedBy(offset * Math.sin(direction), offset * Math.cos(direction)));
    }

    /** The exposures of a band in one plane, in the brightness of the one nearest to the epoch. */
    private Plane merged(String band, List<Turned> turned, List<FittedDisk> fits, Moons moons, View view) {
        List<Plane> pictures = new ArrayList<>();
        List<Plane> weights = new ArrayList<>();
        double brightness = Double.NaN;
        long nearest = Long.MAX_VALUE;
        for (int i = 0; i < turned.size(); i++) {
            Exposure exposure = schedule.exposures().get(i);
            if (!exposure.band().name().equals(band)) {
                continue;
            }
            pictures.add(turned.get(i).picture());
            weights.add(weight(turned.get(i), fits.get(i)));
            long away =
                    Math.abs(exposure.mid().toEpochMilli() - schedule.epoch().toEpochMilli());
            if (away < nearest) {
                nearest = away;
                brightness = fits.get(i).brightness();
            }
        }
        Plane mean = Merge.mean(pictures, weights);
        moons.lay(band, mean, view);
        for (int i = 0; i < mean.data().length; i++) {
            mean.data()[i] *= (float) brightness;
        }
        return mean;
    }

    /** Less noise counts more; so does a place that the frame saw well. */
    private static Plane weight(Turned turned, FittedDisk fit) {
        float relative = (float) (fit.noise() / fit.brightness());
        float whole = 1 / Math.max(relative * relative, 1e-12f);
        Plane weight = turned.trust().copy();
        for (int i = 0; i < weight.data().length; i++) {
            weight.data()[i] = whole * Math.max(LEAST_WEIGHT, weight.data()[i]);
        }
        return weight;
    }

    private List<Combination.FrameResult> results(
            List<FittedDisk> limbs, List<Registered> registered, Turning turning, Sky sky) {
        List<Combination.FrameResult> results = new ArrayList<>();
        for (int i = 0; i < registered.size(); i++) {
            Exposure exposure = schedule.exposures().get(i);
            Registered found = registered.get(i);
            results.add(new Combination.FrameResult(
                    exposure,
                    limbs.get(i),
                    found.fitted().disk(),
                    found.correction(),
                    found.detail(),
                    turning.turnedDeg(exposure.aspect()),
                    sky.shift(exposure.band(), exposure.aspect(), found.fitted().disk()),
                    share(i, limbs),
                    exposure.frame().notes()));
        }
        return results;
    }

    private double share(int index, List<FittedDisk> limbs) {
        String band = schedule.exposures().get(index).band().name();
        double all = 0;
        for (int i = 0; i < limbs.size(); i++) {
            all += schedule.exposures().get(i).band().name().equals(band) ? noiseWeight(limbs.get(i)) : 0;
        }
        return noiseWeight(limbs.get(index)) / all;
    }

    private static double noiseWeight(FittedDisk fit) {
        double relative = fit.noise() / fit.brightness();
        return 1 / Math.max(relative * relative, 1e-12);
    }
}

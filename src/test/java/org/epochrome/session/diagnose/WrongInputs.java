package org.epochrome.session.diagnose;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import org.epochrome.disk.Disk;
import org.epochrome.ephemeris.Site;
import org.epochrome.image.Band;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.session.recipe.Mirroring;
import org.epochrome.session.recipe.Mount;
import org.epochrome.session.recipe.Place;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.recipe.Setup;
import org.epochrome.session.verdict.Diagnosis.Cause;

/** Sessions about which something wrong is said that looks plausible, and sessions about which everything is right. */
final class WrongInputs {
    private static final double GAMMA = 2.2;
    private static final double FULL = 65535;

    private final Path folder;
    private final Map<Evening, List<DatedFrame>> photographed = new HashMap<>();
    private final Evening jupiter = Evening.jupiter();
    private final Evening mars = Evening.mars();

    WrongInputs(Path folder) {
        this.folder = folder;
    }

    /**
     * A wrong session.
     *
     * @param name what is wrong
     * @param recipe what is said
     * @param cause the right explanation; empty if the program knows none
     * @param words that it must contain
     */
    record Case(String name, Supplier<Recipe> recipe, Optional<Cause> cause, String words) {
        Case(String name, Supplier<Recipe> recipe, Cause cause, String words) {
            this(name, recipe, Optional.of(cause), words);
        }
    }

    /** A right session. */
    record Clean(String name, Supplier<Recipe> recipe) {}

    Path newFolder() {
        try {
            return Files.createTempDirectory(folder, "frames");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    List<DatedFrame> frames(Evening evening) {
        return photographed.computeIfAbsent(evening, e -> e.frames(newFolder()));
    }

    Recipe right(Evening evening) {
        return evening.recipe(frames(evening));
    }

    /** Frames some of which are said to be later. */
    Recipe later(Evening evening, Duration by, Integer... which) {
        return evening.recipe(Evening.later(frames(evening), by, which));
    }

    /** Frames two of which have each other's time. */
    Recipe exchanged(Evening evening, int... pairs) {
        List<DatedFrame> frames = new ArrayList<>(frames(evening));
        for (int k = 0; k < pairs.length; k += 2) {
            DatedFrame one = frames.get(pairs[k]);
            DatedFrame other = frames.get(pairs[k + 1]);
            Duration between = Duration.between(
                    one.timing().span().start(), other.timing().span().start());
            frames.set(pairs[k], Evening.later(one, between));
            frames.set(pairs[k + 1], Evening.later(other, between.negated()));
        }
        return evening.recipe(frames);
    }

    Recipe processed(Evening evening, Evening.Processing processing) {
        return evening.recipe(evening.frames(newFolder(), processing));
    }

    static Recipe north(Recipe recipe, double deg) {
        return recipe.with(recipe.setup().with(Setup::northDeg, OptionalDouble.of(Disk.wrapDeg(deg))));
    }

    /** The first frame once more, eight minutes later. */
    Recipe twice(Evening evening) {
        List<DatedFrame> frames = new ArrayList<>(frames(evening));
        DatedFrame first = frames.get(0);
        Path copy = first.head().file().resolveSibling("7-R.tif");
        try {
            Files.write(copy, Files.readAllBytes(first.head().file()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        frames.add(Evening.dated(
                copy,
                Band.R,
                Evening.later(first, Duration.ofMinutes(8)).timing().span()));
        return evening.recipe(frames);
    }

    Recipe bandsSwapped(Evening evening) {
        List<DatedFrame> frames = new ArrayList<>(frames(evening));
        DatedFrame red = frames.get(0);
        DatedFrame blue = frames.get(2);
        frames.set(0, Evening.dated(red.head().file(), Band.B, red.timing().span()));
        frames.set(2, Evening.dated(blue.head().file(), Band.R, blue.timing().span()));
        return evening.recipe(frames);
    }

    static Plane rotated(Plane p, double deg) {
        Plane result = new Plane(p.width(), p.height());
        double cos = Math.cos(Math.toRadians(deg));
        double sin = Math.sin(Math.toRadians(deg));
        double middle = 0.5 * (p.width() - 1);
        for (int y = 0; y < p.height(); y++) {
            for (int x = 0; x < p.width(); x++) {
                double u = inside(cos * (x - middle) - sin * (y - middle) + middle, p.width());
                double v = inside(sin * (x - middle) + cos * (y - middle) + middle, p.height());
                int left = (int) u;
                int top = (int) v;
                double a = u - left;
                double b = v - top;
                result.set(x, y, (float) ((1 - b) * ((1 - a) * p.at(left, top) + a * p.at(left + 1, top))
                        + b * ((1 - a) * p.at(left, top + 1) + a * p.at(left + 1, top + 1))));
            }
        }
        return result;
    }

    private static double inside(double place, int size) {
        return Math.max(0, Math.min(size - 1.001, place));
    }

    static Plane mirrored(Plane p) {
        Plane result = new Plane(p.width(), p.height());
        for (int y = 0; y < p.height(); y++) {
            for (int x = 0; x < p.width(); x++) {
                result.set(x, y, p.at(p.width() - 1 - x, y));
            }
        }
        return result;
    }

    static Plane encoded(Plane p) {
        Plane result = p.copy();
        for (int i = 0; i < result.data().length; i++) {
            result.data()[i] = (float) (FULL * Math.pow(Math.max(0, result.data()[i]) / FULL, 1 / GAMMA));
        }
        return result;
    }

    static Plane sharpened(Plane p) {
        Plane soft = Gaussian.blur(p, 1.5);
        Plane result = p.copy();
        for (int i = 0; i < result.data().length; i++) {
            float sharp = p.data()[i] + 2.5f * (p.data()[i] - soft.data()[i]);
            result.data()[i] = (float) Math.max(0, Math.min(FULL, sharp));
        }
        return result;
    }

    private static Recipe mount(Recipe recipe, Mount mount) {
        return recipe.with(recipe.setup().with(Setup::mount, mount));
    }

    /** The 24 cases. */
    List<Case> wrong() {
        Duration five = Duration.ofMinutes(5);
        Evening low = jupiter.at("2024-12-19T02:30:00Z");
        Evening hour = jupiter.bands(List.of(Band.R, Band.G, Band.B, Band.R, Band.G, Band.B))
                .every(720);
        List<Case> cases = new ArrayList<>();
        cases.add(new Case(
                "R five minutes late",
                () -> later(jupiter, five, 0),
                Cause.TIME,
                "1-R.tif seems to be 5 minutes late"));
        cases.add(new Case(
                "G five minutes late",
                () -> later(jupiter, five, 1),
                Cause.TIME,
                "2-G.tif seems to be 5 minutes late"));
        cases.add(new Case(
                "B five minutes late",
                () -> later(jupiter, five, 2),
                Cause.TIME,
                "3-B.tif seems to be 5 minutes late"));
        cases.add(new Case(
                "R ten minutes early",
                () -> later(jupiter, five.multipliedBy(-2), 0),
                Cause.TIME,
                "1-R.tif seems to be 10 minutes early"));
        cases.add(new Case(
                "B a quarter of an hour late, Mars",
                () -> later(mars, Duration.ofMinutes(15), 2),
                Cause.TIME,
                "3-B.tif seems to be 15 minutes late"));
        cases.add(new Case(
                "B an hour late",
                () -> later(jupiter, Duration.ofHours(1), 2),
                Cause.TIME,
                "3-B.tif seems to be an hour late"));
        cases.add(new Case(
                "R five hours late",
                () -> later(jupiter, Duration.ofHours(5), 0),
                Cause.TIME,
                "1-R.tif seems to be 5 hours late"));
        cases.add(new Case(
                "B a day late",
                () -> later(jupiter, Duration.ofDays(1), 2),
                Cause.TIME,
                "3-B.tif seems to be a day late"));
        cases.add(new Case(
                "G a day late, Mars",
                () -> later(mars, Duration.ofDays(1), 4),
                Cause.TIME,
                "5-G.tif seems to be a day late"));
        cases.add(new Case("times in reverse", () -> exchanged(jupiter, 0, 2), Cause.REVERSED_TIMES, "reverse order"));
        cases.add(new Case(
                "times in reverse, Mars",
                () -> exchanged(mars, 0, 5, 1, 4, 2, 3),
                Cause.REVERSED_TIMES,
                "reverse order"));
        cases.add(new Case(
                "times of two frames exchanged, Mars",
                () -> exchanged(mars, 0, 4),
                Cause.EXCHANGED_TIMES,
                "1-R.tif and 5-G.tif"));
        cases.add(new Case("a frame twice", () -> twice(jupiter), Cause.DUPLICATE, "1-R.tif and 7-R.tif"));
        cases.add(new Case(
                "G rotated by 5 degrees",
                () -> processed(jupiter, (i, p) -> i == 1 ? rotated(p, 5) : p),
                Cause.ROTATED,
                "2-G.tif"));
        cases.add(new Case(
                "R rotated by 5 degrees",
                () -> processed(jupiter, (i, p) -> i == 0 ? rotated(p, 5) : p),
                Cause.ROTATED,
                "1-R.tif"));
        cases.add(new Case(
                "R mirrored", () -> processed(jupiter, (i, p) -> i == 0 ? mirrored(p) : p), Cause.MIRRORED, "1-R.tif"));
        cases.add(new Case(
                "all mirrored, said not to be",
                () -> {
                    Recipe recipe = processed(jupiter, (i, p) -> mirrored(p));
                    return recipe.with(recipe.setup().with(Setup::mirroring, Mirroring.NO));
                },
                Cause.MIRRORED,
                "mirrored"));
        cases.add(new Case("north 180 degrees off", () -> north(right(jupiter), 191), Cause.NORTH, "180 degrees"));
        cases.add(new Case("north 90 degrees off, Mars", () -> north(right(mars), 66), Cause.NORTH, "90 degrees"));
        cases.add(new Case(
                "wrong hemisphere",
                () -> right(jupiter).with(Place.at(new Site(-46.2, 8.5, 480))),
                Cause.SITE,
                "46.20"));
        cases.add(new Case("gamma", () -> processed(jupiter, (i, p) -> encoded(p)), Cause.ENCODED, "gamma"));
        cases.add(new Case("sharpened", () -> processed(jupiter, (i, p) -> sharpened(p)), Cause.SHARPENED, "harpened"));
        cases.add(new Case(
                "mount said to be alt-azimuth", () -> mount(right(hour), Mount.ALTAZ), Cause.MOUNT, "equatorial"));
        cases.add(new Case("R and B swapped, low", () -> bandsSwapped(low), Optional.empty(), ""));
        return cases;
    }

    /** 30 sessions of three planets with other surfaces, seeing, noise, counts of frames, mounts and altitudes. */
    List<Clean> clean() {
        List<Clean> clean = new ArrayList<>();
        List<Band> six = mars.order();
        List<Evening> evenings = new ArrayList<>();
        for (int k = 0; k < 10; k++) {
            double blur = 1.8 + 0.2 * k;
            double snr = k % 2 == 0 ? 250 : 90;
            Evening j = jupiter.of(156 + 31 * (k % 3), 40 + k).seen(blur, snr);
            Evening m = mars.of(314 + 17 * (k % 3), 60 + k).seen(blur, snr);
            Evening s = Evening.saturn().of(271 + 13 * (k % 3), 80 + k).seen(blur, snr);
            evenings.add(
                    k % 3 == 1
                            ? j.bands(six)
                            : k % 3 == 2 ? j.bands(six).every(600).on(Mount.ALTAZ) : j);
            evenings.add(k % 3 == 1 ? m.bands(Evening.RGB) : k % 3 == 2 ? m.every(600) : m);
            evenings.add(k % 3 == 1 ? s.bands(Evening.RGB) : s);
        }
        for (Evening e : evenings) {
            clean.add(new Clean(
                    String.format(
                            Locale.ROOT,
                            "%s, %d frames, blur %.1f px, signal to noise %.0f",
                            e.body().displayName(),
                            e.order().size(),
                            e.blurPx(),
                            e.snr()),
                    () -> right(e)));
        }
        return clean;
    }
}

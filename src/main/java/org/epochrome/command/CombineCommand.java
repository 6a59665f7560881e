package org.epochrome.command;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ForkJoinPool;
import java.util.stream.Collectors;
import org.epochrome.atmosphere.Air;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.evidence.EvidenceReport;
import org.epochrome.image.Band;
import org.epochrome.io.DatedFrame;
import org.epochrome.io.OutputFormat;
import org.epochrome.session.Assignment;
import org.epochrome.session.Combination;
import org.epochrome.session.Combiner;
import org.epochrome.session.Mirroring;
import org.epochrome.session.Mount;
import org.epochrome.session.Outputs;
import org.epochrome.session.Recipe;
import org.epochrome.session.SessionRefused;
import org.epochrome.time.UtcText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The main job: frames in, one colour picture out. */
@Command(
        name = "combine",
        sortOptions = false,
        description = {
            "Combines timestamped grey stacks of a planet, shot through colour filters, into one colour picture.",
            "",
            "Each frame is turned along the planet's rotation from the middle of its recording to one common instant,"
                    + " the epoch, laid exactly on the others, and merged.",
        },
        footer = {
            "",
            "Examples:",
            "  combine --site 46.2,8.5,480 --out jupiter.png jup_R.fits jup_G.fits jup_B.fits",
            "  combine --body mars --north 31 --sheet session.csv --out mars.fits",
            "",
            "Exit: 0 done, 2 wrong usage, 3 an input was refused, 4 no disk found, 5 an output could not be written.",
        })
final class CombineCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Mixin
    private FrameOptions frames;

    @Mixin
    private PlaceOptions place;

    @Mixin
    private AlignmentOptions alignment;

    @Mixin
    private FinishOptions finish;

    @Option(
            names = {"-b", "--body"},
            paramLabel = "PLANET",
            converter = Texts.Planet.class,
            description = "The planet, if no FITS header (OBJECT) tells it.")
    private Body body;

    @Option(
            names = {"-e", "--epoch"},
            paramLabel = "UTC",
            converter = Texts.Utc.class,
            description =
                    "The instant that the picture shows. Default: midway between the middles of the first and the last"
                            + " recording.")
    private Instant epoch;

    @Option(
            names = {"-n", "--north"},
            paramLabel = "DEG|auto",
            defaultValue = "auto",
            converter = Texts.North.class,
            description = "North angle of the reference frame: from image up to the planet's north pole,"
                    + " counter-clockwise positive. Jupiter shows it by itself; the others need it. With celestial north up"
                    + " and no mirroring it is P, which the aspect command tells.")
    private OptionalDouble north = OptionalDouble.empty();

    @Option(
            names = "--mirrored",
            paramLabel = "yes|no|auto",
            defaultValue = "auto",
            description =
                    "Whether the frames are mirrored (an odd number of reflections, as with a star diagonal). auto: found"
                            + " from the lit side or the sense of rotation where --north is given, else taken as no.")
    private Mirroring mirrored;

    @Option(
            names = "--scale",
            paramLabel = "ARCSEC",
            description =
                    "Plate scale in arcsec per pixel, if you know it better than the disk shows it (a few hundredths of a per cent).")
    private Double scale;

    @Option(
            names = "--mount",
            paramLabel = "equatorial|altaz",
            defaultValue = "equatorial",
            description =
                    "equatorial: the frames are turned alike; altaz: the field turns from frame to frame, which needs"
                            + " --site.")
    private Mount mount;

    @Option(
            names = "--rotation-system",
            paramLabel = "I|II|III|zonal",
            description =
                    "The longitude system that the surface turns with, or zonal: each latitude of Jupiter or Saturn at"
                            + " its own rate. Default: III, for other planets their only one.")
    private String system;

    @Option(
            names = "--pressure",
            paramLabel = "HPA",
            description = "Air pressure at the site itself, not at sea level, hPa. Default: usual at its height.")
    private Double pressure;

    @Option(
            names = "--temperature",
            paramLabel = "C",
            description = "Air temperature at the site, degrees Celsius. Default: 10.")
    private Double temperature;

    @Option(
            names = "--humidity",
            paramLabel = "PCT",
            description = "Relative humidity at the site, per cent. Default: 40.")
    private Double humidity;

    @Option(
            names = "--no-turn",
            description = "Lay the frames on top of each other without turning them, to see the difference.")
    private boolean noTurn;

    @Option(names = "--no-dispersion", description = "Leave out of account how the atmosphere smears each band.")
    private boolean noDispersion;

    @Option(
            names = "--no-moons",
            description = "Let moons and their shadows turn with the globe, as if they lay on it.")
    private boolean noMoons;

    @Option(
            names = "--unsmear",
            description = "Undo what dispersion draws out within a band: sharper blue low in the sky, more noise.")
    private boolean unsmear;

    @Option(
            names = "--assign",
            paramLabel = "R=BAND,G=BAND,B=BAND",
            split = ",",
            description = "Bands shown as red, green and blue, if they are not R, G and B: --assign R=IR,G=R,B=G.")
    private Map<String, String> assign = new LinkedHashMap<>();

    @Option(
            names = "--luminance-from",
            paramLabel = "BAND|none",
            description = "The band that the picture's fine brightness comes from; none: from the colours themselves."
                    + " Default: L if there are frames in it.")
    private String luminanceFrom;

    @Option(
            names = {"-o", "--out"},
            paramLabel = "FILE",
            description =
                    "File to write (repeatable); its suffix tells the format: .fits the linear colour cube, .tif and .png"
                            + " a finished picture with 16 bits, .jpg one to share. Default: PLANET-EPOCH.png in this folder.")
    private List<Path> out = new ArrayList<>();

    @Option(
            names = "--depth",
            paramLabel = "16|32",
            defaultValue = "16",
            description = "Bits per sample of a .tif: 16 integers, 32 floats, whose highlights are not clipped."
                    + " Default: 16.")
    private int depth;

    @Option(
            names = {"-r", "--report"},
            paramLabel = "FILE",
            description =
                    "File to write everything that was found to (repeatable): .json for programs, .html for people,"
                            + " with pictures, to print.")
    private List<Path> reports = new ArrayList<>();

    @Mixin
    private GlobeOptions globe;

    @Option(names = "--overwrite", description = "Replace files that exist.")
    private boolean overwrite;

    @Option(
            names = {"-q", "--quiet"},
            description = "Say nothing but problems.")
    private boolean quiet;

    @Option(names = "--threads", paramLabel = "N", description = "How many threads work. Default: one per core.")
    private Integer threads;

    @Override
    public Integer call() {
        List<DatedFrame> found = frames.find();
        Body planet = bodyOf(found);
        Recipe recipe = new Recipe(
                found,
                planet,
                place.site(),
                air(),
                Optional.ofNullable(epoch),
                north,
                mirrored,
                scale == null ? OptionalDouble.empty() : OptionalDouble.of(positive("--scale", scale)),
                mount,
                rotationSystem(planet),
                !noTurn,
                !noDispersion,
                unsmear,
                alignment.spectrum(),
                alignment.alignment(found),
                assignment(found),
                !noMoons);
        Outputs outputs = new Outputs(
                out.isEmpty() ? List.of(defaultName(recipe)) : out,
                report(reports, false),
                finish.look(),
                depth() == 32,
                overwrite);
        GlobeOptions.Files globeFiles = globe.files(overwrite);
        outputs.check();
        globeFiles.check();
        Optional<Path> evidence = report(reports, true);
        evidence.ifPresent(file -> Outputs.checkFree(file, overwrite));
        TerminalProgress progress = new TerminalProgress(!quiet);
        Combination combination = inPool(() -> new Combiner(recipe).combine(progress));
        progress.end();
        outputs.write(combination, Version.NUMBER);
        globeFiles.write(combination, outputs, Version.NUMBER);
        evidence.ifPresent(
                file -> Outputs.writeReport(file, EvidenceReport.of(combination, outputs, Version.NUMBER), overwrite));
        if (!quiet) {
            Summary.print(combination, outputs, System.out);
            globeFiles.paths().forEach(file -> System.out.println("wrote " + file));
            evidence.ifPresent(file -> System.out.println("wrote " + file));
        }
        combination.warnings().forEach(w -> System.err.println("Note: " + w));
        found.forEach(f -> f.notes()
                .forEach(n -> System.err.println("Note: " + f.head().file().getFileName() + ": " + n)));
        return 0;
    }

    private Assignment assignment(List<DatedFrame> found) {
        Assignment usual = Assignment.usual(found);
        Map<String, String> bands = new LinkedHashMap<>(Map.of("R", "R", "G", "G", "B", "B"));
        assign.forEach((colour, band) -> {
            if (bands.replace(colour.strip().toUpperCase(Locale.ROOT), bandName(band)) == null) {
                throw new ParameterException(
                        spec.commandLine(),
                        "--assign knows R, G and B, not '" + colour + "'; write it like R=IR,G=R,B=G.");
            }
        });
        Optional<String> luminance = luminanceFrom == null
                ? usual.luminance().filter(l -> !bands.containsValue(l))
                : Optional.of(bandName(luminanceFrom)).filter(l -> !l.equalsIgnoreCase("none"));
        return new Assignment(bands.get("R"), bands.get("G"), bands.get("B"), luminance);
    }

    /** The short name of a known band in any case, or a name of the user's as it is. */
    private static String bandName(String text) {
        return Band.known(text).map(Band::name).orElse(text.strip());
    }

    private <T> T inPool(Callable<T> work) {
        int count = threads == null ? Runtime.getRuntime().availableProcessors() : threads;
        if (count < 1) {
            throw new ParameterException(spec.commandLine(), "--threads must be 1 or more.");
        }
        ForkJoinPool pool = new ForkJoinPool(count);
        try {
            return pool.invoke(java.util.concurrent.ForkJoinTask.adapt(work));
        } catch (RuntimeException e) {
            throw Causes.original(e);
        } finally {
            pool.shutdown();
        }
    }

    private Body bodyOf(List<DatedFrame> found) {
        Set<Body> named =
                found.stream().flatMap(f -> f.object().stream()).collect(Collectors.toCollection(LinkedHashSet::new));
        if (named.size() > 1) {
            String list = found.stream()
                    .filter(f -> f.object().isPresent())
                    .map(f -> f.head().file().getFileName() + " "
                            + f.object().get().displayName())
                    .collect(Collectors.joining(", "));
            throw new InputsRefused(
                    "The headers name more than one planet (" + list + "); combine frames of one planet at a time.");
        }
        if (body == null && named.isEmpty()) {
            throw new SessionRefused("no header tells the planet; give it by --body");
        }
        if (body != null && !named.isEmpty() && !named.contains(body)) {
            System.err.println(
                    "Note: The headers say " + named.iterator().next().displayName() + ", --body says "
                            + body.displayName() + "; --body was used.");
        }
        return body != null ? body : named.iterator().next();
    }

    private Optional<RotationSystem> rotationSystem(Body planet) {
        if (system == null) {
            return Optional.of(planet.defaultSystem());
        }
        if (system.equalsIgnoreCase("zonal")) {
            return Optional.empty();
        }
        return Optional.of(planet.systems().stream()
                .filter(s -> s.key().equalsIgnoreCase(system))
                .findFirst()
                .orElseThrow(() -> new ParameterException(
                        spec.commandLine(),
                        planet.displayName() + " has no rotation system '" + system + "'; it has "
                                + planet.systems().stream()
                                        .map(RotationSystem::key)
                                        .collect(Collectors.joining(", "))
                                + ".")));
    }

    private Optional<Air> air() {
        if (pressure == null && temperature == null && humidity == null) {
            return Optional.empty();
        }
        Air usual = Air.standardAt(place.site().map(s -> s.heightM()).orElse(0.0));
        try {
            return Optional.of(new Air(
                    pressure == null ? usual.pressureHpa() : pressure,
                    temperature == null ? usual.temperatureC() : temperature,
                    humidity == null ? usual.relativeHumidity() : humidity / 100));
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage());
        }
    }

    /** The report for people, or the one for programs. */
    private Optional<Path> report(List<Path> files, boolean forPeople) {
        List<Path> matching = files.stream()
                .filter(f -> f.toString().toLowerCase(Locale.ROOT).endsWith(".html") == forPeople)
                .toList();
        if (matching.size() > 1) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--report takes one .json and one .html; " + matching.get(1) + " is one too many.");
        }
        return matching.stream().findFirst();
    }

    private int depth() {
        boolean tiff = out.stream().anyMatch(f -> OutputFormat.of(f) == OutputFormat.TIFF);
        if (depth != 16 && depth != 32) {
            throw new ParameterException(spec.commandLine(), "--depth is 16 or 32, not " + depth + ".");
        }
        if (depth == 32 && !tiff) {
            throw new ParameterException(
                    spec.commandLine(), "--depth 32 is for TIFF; name a .tif by --out, or a .fits for linear data.");
        }
        return depth;
    }

    private double positive(String option, double value) {
        if (!(value > 0)) {
            throw new ParameterException(spec.commandLine(), option + " must be more than 0, not " + value + ".");
        }
        return value;
    }

    private static Path defaultName(Recipe recipe) {
        Instant shown = Combiner.epoch(recipe);
        String stamp = UtcText.format(shown).replaceAll("[:]", "").replaceAll("\\.\\d+", "");
        return Path.of(recipe.body().displayName().toLowerCase(Locale.ROOT) + "-" + stamp + ".png");
    }
}

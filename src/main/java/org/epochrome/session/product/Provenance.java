package org.epochrome.session.product;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.image.Passband;
import org.epochrome.io.fits.FitsCard;
import org.epochrome.io.fits.FitsTable;
import org.epochrome.io.fits.FitsTable.Column;
import org.epochrome.io.write.PictureWriter;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.combine.Combination.FrameResult;
import org.epochrome.session.recipe.PixelOffset;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.schedule.RotationLaw;
import org.epochrome.time.RecordingSpan;
import org.epochrome.time.UtcText;

/** The provenance of a result in FITS: keywords, history, and the list of frames. */
public final class Provenance {
    private static final double ARCSEC_PER_RADIUS = 0.5;
    /** The program's name in files. */
    public static final String TOOL = "Epochrome";

    private static final List<String> SHOWN_AS = List.of("red", "green", "blue");

    private final Combination c;
    private final String version;

    public Provenance(Combination combination, String version) {
        this.c = combination;
        this.version = version;
    }

    /** What a picture of the combination says about itself. */
    public static PictureWriter.Caption caption(Combination c, String version) {
        return new PictureWriter.Caption(
                c.recipe().body().displayName() + ", " + UtcText.format(c.epoch()) + ", by " + TOOL,
                Optional.of(c.epoch()),
                TOOL + " " + version);
    }
    /** What holds for every file made of the combination: object, times, place, program. */
    List<FitsCard> common() {
        List<FitsCard> cards = new ArrayList<>();
        Instant begin = extreme(f -> span(f).start(), Comparator.naturalOrder());
        Instant end = extreme(f -> span(f).end(), Comparator.reverseOrder());
        cards.add(new FitsCard("OBJECT", c.recipe().body().displayName(), ""));
        cards.add(new FitsCard("DATE-OBS", fitsTime(c.epoch()), "epoch: the instant that is shown"));
        cards.add(new FitsCard("DATE-BEG", fitsTime(begin), "start of the first recording"));
        cards.add(new FitsCard("DATE-END", fitsTime(end), "end of the last recording"));
        cards.add(new FitsCard(
                "TELAPSE", Duration.between(begin, end).toMillis() / 1000.0, "[s] from DATE-BEG to DATE-END"));
        cards.add(new FitsCard("TIMESYS", "UTC", "time scale"));
        cards.add(new FitsCard("TREFPOS", "TOPOCENT", "times are the observer's, not corrected for light"));
        c.recipe().place().site().ifPresent(site -> {
            cards.add(new FitsCard("OBSGEO-B", site.latitudeDeg(), "[deg] geodetic latitude of the site"));
            cards.add(new FitsCard("OBSGEO-L", site.longitudeDeg(), "[deg] longitude of the site, east positive"));
            cards.add(new FitsCard("OBSGEO-H", site.heightM(), "[m] height of the site"));
        });
        cards.add(new FitsCard("CREATOR", TOOL + " " + version, ""));
        return cards;
    }

    /** How the body stood at the epoch. */
    List<FitsCard> aspect() {
        Aspect a = c.aspect();
        List<FitsCard> cards = new ArrayList<>();
        for (RotationSystem system : c.recipe().body().systems()) {
            cards.add(new FitsCard(
                    system == RotationSystem.SINGLE ? "CM" : "CM" + system.key(),
                    a.centralMeridianDeg(system),
                    "[deg] central meridian"));
        }
        cards.add(new FitsCard("SUBELAT", a.subEarthLatitudeDeg(), "[deg] sub-Earth latitude, planetographic"));
        cards.add(new FitsCard("SUBSLAT", a.subSolarLatitudeDeg(), "[deg] sub-solar latitude, planetographic"));
        cards.add(new FitsCard("SUBSLON", a.subSolarLongitudeDeg(), "[deg] sub-solar longitude, planetographic"));
        cards.add(new FitsCard("POLEANG", a.poleAngleDeg(), "[deg] position angle of the pole"));
        cards.add(new FitsCard("PHASE", a.phaseAngleDeg(), "[deg] phase angle"));
        cards.add(new FitsCard("EQUDIAM", a.equatorialDiameterArcsec(), "[arcsec] equatorial diameter"));
        cards.add(new FitsCard("OBSDIST", a.distanceAu(), "[AU] distance from the observer"));
        return cards;
    }

    /** Which band each plane of a colour product holds. */
    List<FitsCard> planes() {
        List<FitsCard> cards = new ArrayList<>();
        cards.add(new FitsCard("CTYPE3", "RGB", "planes shown as red, green, blue"));
        for (int k = 1; k <= SHOWN_AS.size(); k++) {
            String name = c.recipe().assignment().colours().get(k - 1);
            Passband passband = c.frames().stream()
                    .map(f -> f.exposure().band())
                    .filter(band -> band.name().equals(name))
                    .findFirst()
                    .orElseThrow()
                    .passband();
            cards.add(new FitsCard("BAND" + k, name, "band of the plane shown as " + SHOWN_AS.get(k - 1)));
            cards.add(new FitsCard("WAVEMIN" + k, passband.fromNm(), "[nm] passband, from"));
            cards.add(new FitsCard("WAVEMAX" + k, passband.toNm(), "[nm] passband, to"));
        }
        return cards;
    }

    /** All keywords of the colour cube. */
    public List<FitsCard> cube() {
        List<FitsCard> cards = new ArrayList<>(common());
        cards.add(new FitsCard("BUNIT", "1", "fraction of full scale, linear"));
        cards.addAll(planes());
        cards.add(new FitsCard("DISKX", c.disk().x() + 1, "[pix] disk centre, column from 1"));
        cards.add(new FitsCard("DISKY", c.cube().height() - c.disk().y(), "[pix] disk centre, row from 1, bottom up"));
        cards.add(new FitsCard("DISKR", c.disk().equatorialRadiusPx(), "[pix] equatorial radius"));
        cards.add(new FitsCard("NORTHANG", c.disk().northAngleDeg(), "[deg] up to north, counter-clockwise"));
        cards.add(new FitsCard("MIRRORED", c.disk().mirrored(), "odd number of reflections"));
        cards.add(new FitsCard(
                "PIXSCALE",
                ARCSEC_PER_RADIUS
                        * c.aspect().equatorialDiameterArcsec()
                        / c.disk().equatorialRadiusPx(),
                "[arcsec] side of a pixel"));
        cards.addAll(aspect());
        return cards;
    }

    /** What was done, a line each. */
    public List<String> history() {
        Recipe r = c.recipe();
        List<String> lines = new ArrayList<>();
        lines.add(
                r.corrections().turn()
                        ? "Frames turned to the epoch by "
                                + c.rotationLaws().keySet().stream()
                                        .map(RotationLaw::name)
                                        .collect(Collectors.joining(" and by "))
                        : "Frames aligned but not turned");
        lines.add(
                r.corrections().dispersion() && r.place().site().isPresent()
                        ? "Atmospheric dispersion corrected"
                                + (switch (r.corrections().unsmear()) {
                                    case NONE -> "";
                                    case HALF -> ", half of a long blur within a band removed";
                                    case ALL -> ", blur within each band removed";
                                })
                        : "Atmospheric dispersion not corrected");
        lines.add("Colours misaligned by " + c.quality().before().text() + " in a simple stack, by "
                + c.quality().after().text() + " here");
        for (FrameResult f : c.frames()) {
            lines.add(String.format(
                    Locale.ROOT,
                    "%s %s mid %s turned %.3f deg",
                    f.exposure().band().name(),
                    name(f),
                    UtcText.format(f.exposure().mid()),
                    f.rotationDeg() + 0.0));
        }
        c.warnings().forEach(w -> lines.add("Note: " + w));
        return lines;
    }

    /** One row per plane of a frame. */
    public FitsTable frames() {
        return new FitsTable(
                "FRAMES",
                List.of(
                        texts("FILE", "frame", Provenance::name),
                        texts("BAND", "band of the frame", f -> f.exposure()
                                .band()
                                .name()),
                        texts("DATE_BEG", "start of its recording, UTC", f -> fitsTime(span(f).start())),
                        texts("DATE_END", "end of its recording, UTC", f -> fitsTime(span(f).end())),
                        texts(
                                "TIMESRC",
                                "source of the times",
                                f -> f.exposure().frame().timing().source().toString()),
                        numbers(
                                "DISKX",
                                "pixel",
                                "disk centre, column from 1",
                                f -> f.disk().x() + 1),
                        numbers(
                                "DISKY",
                                "pixel",
                                "disk centre, row from 1, bottom up",
                                f -> f.exposure().frame().head().height()
                                        - f.disk().y()),
                        numbers("DISKR", "pixel", "equatorial radius", f -> f.disk()
                                .equatorialRadiusPx()),
                        numbers("DISKSIG", "pixel", "standard error of the centre", f -> f.limb()
                                .centreSigmaPx()),
                        numbers("NORTHANG", "deg", "up to north, counter-clockwise", f -> f.disk()
                                .northAngleDeg()),
                        numbers("SHIFTX", "pixel", "final centre minus that of the limb, right", f -> f.correction()
                                .x()),
                        numbers("SHIFTY", "pixel", "final centre minus that of the limb, up", f -> -f.correction()
                                .y()),
                        numbers("DISPX", "pixel", "predicted dispersion against G, right", f -> f.dispersion()
                                .map(PixelOffset::x)
                                .orElse(Double.NaN)),
                        numbers("DISPY", "pixel", "predicted dispersion against G, up", f -> f.dispersion()
                                .map(d -> -d.y())
                                .orElse(Double.NaN)),
                        numbers(
                                "ROTATION",
                                "deg",
                                "turned to the epoch, with the rotation",
                                f -> f.rotationDeg() + 0.0),
                        numbers("WEIGHT", "", "weight within its band", FrameResult::weight)));
    }

    private Column texts(String name, String comment, Function<FrameResult, String> value) {
        return Column.texts(name, comment, c.frames().stream().map(value).toList());
    }

    private Column numbers(String name, String unit, String comment, ToDoubleFunction<FrameResult> value) {
        return Column.numbers(
                name,
                unit,
                comment,
                c.frames().stream().map(f -> value.applyAsDouble(f)).toList());
    }

    private Instant extreme(Function<FrameResult, Instant> of, Comparator<Instant> order) {
        return c.frames().stream().map(of).min(order).orElseThrow();
    }

    private static RecordingSpan span(FrameResult f) {
        return f.exposure().frame().timing().span();
    }

    private static String name(FrameResult f) {
        return f.exposure().frame().head().file().getFileName().toString();
    }

    /** As FITS has it, without the Z (FITS Standard 4.0, section 9.1.1). */
    private static String fitsTime(Instant instant) {
        String text = UtcText.format(instant);
        return text.substring(0, text.length() - 1);
    }
}

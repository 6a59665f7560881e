package org.epochrome.demo.scene;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.epochrome.demo.world.AlbedoMap;
import org.epochrome.demo.world.Dice;
import org.epochrome.demo.world.Surface;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.image.Band;
import org.epochrome.image.Plane;

/**
 * A planet under the sky, ready to be photographed.
 *
 * @param surface what is on it, per band
 * @param aspects how it stands at an instant
 * @param bands settings by the band's name
 * @param background level of the sky
 * @param rings its rings
 * @param moons its moons
 */
public record Scene(
        Surface surface,
        Function<Instant, Aspect> aspects,
        Map<String, BandSetting> bands,
        double background,
        RingSystem rings,
        List<SceneMoon> moons) {
    public Scene {
        bands = Map.copyOf(bands);
        moons = List.copyOf(moons);
    }

    /** A planet without rings and moons. */
    public Scene(
            Surface surface, Function<Instant, Aspect> aspects, Map<String, BandSetting> bands, double background) {
        this(surface, aspects, bands, background, RingSystem.NONE, List.of());
    }

    /** This scene with other rings. */
    public Scene with(RingSystem other) {
        return new Scene(surface, aspects, bands, background, other, moons);
    }

    /** This scene with other moons. */
    public Scene with(List<SceneMoon> others) {
        return new Scene(surface, aspects, bands, background, rings, others);
    }

    /**
     * A recording as a camera would bring it home: smeared by rotation and dispersion, blurred, noisy. The disk is held
     * still during the recording, and the air is that of its middle.
     *
     * @throws IllegalArgumentException if the band has no setting, or if there is dispersion but no zenith
     */
    public Rendered photograph(Shot shot) {
        Camera camera = shot.camera();
        Aspect middle = aspects.apply(shot.span().mid());
        List<Aspect> moments = new ArrayList<>();
        for (int i = 0; i < shot.moments(); i++) {
            long nanos = shot.span().duration().toNanos();
            long since = Math.round(nanos * ((i + 0.5) / shot.moments()));
            moments.add(aspects.apply(shot.span().start().plusNanos(since)));
        }
        List<Supersampled.Shift> shifts = shifts(shot, middle);
        double[] light = light(shot.band(), camera, moments, shifts);
        return new Rendered(expose(light, shot), disk(camera, middle, shifts));
    }

    /**
     * The picture that a perfect combination would give: the given instant, the same blur, no smear, no dispersion, no
     * noise, no background; brightness before gain, so that the ratios of the bands are the planet's true colours.
     */
    public Rendered truth(Band band, Camera camera, Instant epoch) {
        Aspect aspect = aspects.apply(epoch);
        List<Supersampled.Shift> none = List.of(new Supersampled.Shift(0, 0));
        double[] light = light(band, camera, List.of(aspect), none);
        return new Rendered(Supersampled.plane(camera.width(), camera.height(), light), disk(camera, aspect, none));
    }

    /**
     * The truth in several bands on the grid of a recording, the planet standing where that recording has it
     * (dispersion included) and as it stood at the epoch.
     */
    public List<Rendered> truth(List<Band> cube, Shot reference, Instant epoch) {
        Camera camera = reference.camera();
        TrueDisk seen = disk(reference);
        Camera there = camera.offsetBy(
                camera.offsetXPx() + seen.x() - camera.centreX(), camera.offsetYPx() + seen.y() - camera.centreY());
        return cube.stream().map(band -> truth(band, there, epoch)).toList();
    }

    /** Where the planet is in a recording. */
    public TrueDisk disk(Shot shot) {
        Aspect middle = aspects.apply(shot.span().mid());
        return disk(shot.camera(), middle, shifts(shot, middle));
    }

    private BandSetting setting(Band band) {
        BandSetting setting = bands.get(band.name());
        if (setting == null) {
            throw new IllegalArgumentException("The scene has no settings for the band " + band.name() + ".");
        }
        return setting;
    }

    private double[] light(Band band, Camera camera, List<Aspect> moments, List<Supersampled.Shift> shifts) {
        BandSetting setting = setting(band);
        AlbedoMap albedo = surface.albedo(band);
        double radiusPx =
                moments.stream().mapToDouble(a -> radiusPx(camera, a)).max().orElseThrow();
        // one per mille of grace for the finite distance
        double extentPx = 1.001 * radiusPx * reach(moments);
        Supersampled sharp = Supersampled.around(camera.centreX(), camera.centreY(), extentPx, 1.001 * radiusPx);
        for (Aspect moment : moments) {
            View view = View.of(moment, camera);
            Globe globe = new Globe(view, albedo, setting.minnaertK());
            List<Ball> balls = moons.stream()
                    .map(moon -> new Ball(moon, moon.course().apply(moment.utc()), view, band.name()))
                    .toList();
            Planet planet = new Planet(view, globe, new Rings(rings, view, band.name()), balls);
            sharp.add(
                    (x, y) -> planet.brightness(
                            (x - camera.centreX()) * view.pixel(), (camera.centreY() - y) * view.pixel()),
                    1.0 / moments.size());
        }
        return sharp.integrate(camera.width(), camera.height(), setting.blurFwhmPx(), shifts);
    }

    /** How far from the centre there is light, equatorial radii. */
    private double reach(List<Aspect> moments) {
        double ofMoons = moons.stream()
                .flatMapToDouble(moon -> moments.stream().mapToDouble(moment -> moon.reach(moment.utc())))
                .max()
                .orElse(0);
        return Math.max(Math.max(1, rings.outer()), ofMoons);
    }

    private static List<Supersampled.Shift> shifts(Shot shot, Aspect aspect) {
        if (shot.towardsZenithArcsec().isEmpty()) {
            return List.of(new Supersampled.Shift(0, 0));
        }
        double zenith = aspect.horizontal()
                .orElseThrow(() -> new IllegalArgumentException("Dispersion needs a site, for the zenith."))
                .parallacticAngleDeg();
        double angle = StrictMath.toRadians(shot.camera().displayedAngleDeg(zenith));
        return shot.towardsZenithArcsec().stream()
                .map(arcsec -> arcsec / shot.camera().arcsecPerPx())
                .map(px -> new Supersampled.Shift(-StrictMath.sin(angle) * px, -StrictMath.cos(angle) * px))
                .toList();
    }

    private static TrueDisk disk(Camera camera, Aspect aspect, List<Supersampled.Shift> shifts) {
        double dx = shifts.stream().mapToDouble(Supersampled.Shift::x).sum() / shifts.size();
        double dy = shifts.stream().mapToDouble(Supersampled.Shift::y).sum() / shifts.size();
        return new TrueDisk(
                camera.centreX() + dx,
                camera.centreY() + dy,
                radiusPx(camera, aspect),
                camera.displayedAngleDeg(aspect.poleAngleDeg()),
                camera.mirrored());
    }

    private static double radiusPx(Camera camera, Aspect aspect) {
        return 0.5 * aspect.equatorialDiameterArcsec() / camera.arcsecPerPx();
    }

    private Plane expose(double[] light, Shot shot) {
        double gain = setting(shot.band()).gain();
        Noise noise = shot.noise();
        Dice dice = new Dice(noise.seed());
        for (int i = 0; i < light.length; i++) {
            double signal = gain * light[i];
            double sigma = noise.sigma(signal);
            light[i] = background + signal + (sigma > 0 ? sigma * dice.normal(i) : 0);
        }
        return Supersampled.plane(shot.camera().width(), shot.camera().height(), light);
    }
}

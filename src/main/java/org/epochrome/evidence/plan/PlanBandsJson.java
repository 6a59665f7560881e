package org.epochrome.evidence.plan;

import java.util.List;
import java.util.Optional;
import org.epochrome.plan.BandPlan;
import org.epochrome.plan.Motion;
import org.epochrome.plan.limit.BandDispersion;

/**
 * An object of "bands" in the JSON of a plan: smear is that of the longest recording by rotation, dispersion the shift against green,
 * dispersionWithin the smear by dispersion, all when the planet is highest.
 */
record PlanBandsJson(
        String band,
        List<Double> passbandNm,
        double diffractionArcsec,
        double resolutionArcsec,
        double longestRecordingS,
        double fullSmearRecordingS,
        double smearArcsec,
        double smearPx,
        double contrastLoss,
        Optional<Double> dispersionArcsec,
        Optional<Double> dispersionPx,
        Optional<Double> dispersionWithinArcsec,
        Optional<Double> dispersionWithinPx,
        Optional<Boolean> dispersionWithinExceedsResolution,
        double lowestAltitudeDeg,
        Pixels sampling) {

    private record Pixels(
            double finestArcsecPerPx, double coarsestArcsecPerPx, double finestFRatio, double coarsestFRatio) {}

    /** @param scale arcsec per pixel */
    static PlanBandsJson of(BandPlan b, double scale) {
        Optional<Double> shift = b.dispersion().map(BandDispersion::shiftArcsec);
        Optional<Double> within = b.dispersion().map(BandDispersion::smearArcsec);
        return new PlanBandsJson(
                b.band().name(),
                List.of(b.band().passband().fromNm(), b.band().passband().toNm()),
                b.limit().diffractionArcsec(),
                b.limit().resolutionArcsec(),
                b.limit().longestS(),
                b.limit().fullSmearS(),
                b.limit().rotationSmearArcsec(),
                b.limit().rotationSmearArcsec() / scale,
                b.limit().contrastLoss(),
                shift,
                shift.map(arcsec -> arcsec / scale),
                within,
                within.map(arcsec -> arcsec / scale),
                b.dispersion().map(BandDispersion::smearExceedsResolution),
                b.lowestAltitudeDeg(),
                new Pixels(
                        b.sampling().finestArcsecPerPx(),
                        b.sampling().coarsestArcsecPerPx(),
                        b.sampling().finestFRatio(),
                        b.sampling().coarsestFRatio()));
    }

    /** The object "motion": how fast the surface moves on the central meridian. */
    record Speed(
            double centreArcsecPerMin, double centrePxPerMin, double fastestArcsecPerMin, List<Motion.Rate> latitudes) {
        static Speed of(Motion m) {
            return new Speed(m.centre().arcsecPerMin(), m.centre().pxPerMin(), m.fastestArcsecPerMin(), m.latitudes());
        }
    }
}

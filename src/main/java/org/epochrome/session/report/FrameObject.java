package org.epochrome.session.report;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.epochrome.align.Limb;
import org.epochrome.align.SharedError;
import org.epochrome.align.Shift;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.image.blur.Smear;
import org.epochrome.io.identify.Timing;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.combine.Combination.FrameResult;
import org.epochrome.session.recipe.PixelOffset;
import org.epochrome.session.schedule.AtmosphericDispersion;
import org.epochrome.text.Message;

/** A frame in the report of a combination. */
record FrameObject(
        String file,
        String band,
        @JsonUnwrapped Times times,
        AspectObject ephemeris,
        FitObject disk,
        double rotationDeg,
        PixelOffset shiftPx,
        Optional<Shift> detailPx,
        Witnesses witnesses,
        Optional<PixelOffset> predictedDispersionPx,
        SmearObject smear,
        double weight,
        List<Message> warnings) {

    static FrameObject of(FrameResult f) {
        return new FrameObject(
                f.exposure().frame().head().file().toString(),
                f.exposure().band().name(),
                Times.of(f.exposure().frame().timing()),
                AspectObject.of(f.exposure().aspect()),
                FitObject.of(f.limb(), f.disk()),
                f.rotationDeg(),
                f.correction(),
                known(f.witnesses().detail()),
                Witnesses.of(f.witnesses()),
                f.dispersion(),
                SmearObject.of(f),
                f.weight(),
                f.warnings());
    }

    private static Optional<Shift> known(Shift shift) {
        return Optional.of(shift).filter(Shift::known);
    }

    /** When a frame was recorded. */
    record Times(Instant start, Instant end, Instant mid, Message timeSource, double timeSigmaS) {
        static Times of(Timing timing) {
            return new Times(
                    timing.span().start(),
                    timing.span().end(),
                    timing.span().mid(),
                    timing.source(),
                    timing.span().midSigmaS());
        }
    }

    /** A fitted disk, and where the limb alone puts its centre. */
    record FitObject(
            @JsonUnwrapped Disk disk,
            double sigmaPx,
            double radiusSigmaPx,
            double northSigmaDeg,
            PixelOffset limb,
            double minnaert,
            double blurPx,
            double background,
            double brightness) {
        static FitObject of(FittedDisk fit, Disk disk) {
            return new FitObject(
                    disk,
                    fit.centreSigmaPx(),
                    fit.radiusSigmaPx(),
                    fit.northSigmaDeg(),
                    new PixelOffset(fit.disk().x(), fit.disk().y()),
                    fit.shading().minnaert(),
                    fit.shading().blurPx(),
                    fit.background(),
                    fit.brightness());
        }
    }

    /** What limb, detail and physics say about a frame's place. */
    record Witnesses(
            LimbObject limb,
            Optional<Shift> detail,
            Optional<Shift> physics,
            Errors place,
            Agreement agreement,
            List<String> leftOut,
            PixelOffset nudgePx) {
        static Witnesses of(Combination.Witnesses w) {
            return new Witnesses(
                    LimbObject.of(w.limb()),
                    known(w.detail()),
                    known(w.physics()),
                    new Errors(w.place().sigmaX(), w.place().sigmaY(), w.place().covariance()),
                    new Agreement(w.limbToDetail(), w.limbToPhysics()),
                    w.leftOut().stream()
                            .sorted()
                            .map(out -> out.name().toLowerCase(Locale.ROOT))
                            .toList(),
                    w.nudge());
        }
    }

    /** How sure the limb is. */
    record LimbObject(
            double sigmaPx, Optional<PixelOffset> byNorthPx, Optional<PixelOffset> bySizePx, PixelOffset byTimePx) {
        static LimbObject of(Limb limb) {
            return new LimbObject(
                    limb.sigmaPx(),
                    shared(limb, SharedError.Kind.NORTH),
                    shared(limb, SharedError.Kind.SIZE),
                    new PixelOffset(limb.ownX(), limb.ownY()));
        }

        private static Optional<PixelOffset> shared(Limb limb, SharedError.Kind kind) {
            return limb.shared().stream()
                    .filter(s -> s.kind() == kind)
                    .findFirst()
                    .map(s -> new PixelOffset(s.x(), s.y()));
        }
    }

    /** Standard errors of a place, pixels, and their covariance. */
    record Errors(double sigmaX, double sigmaY, double covariance) {}

    /** How far two lie apart, in standard errors. */
    record Agreement(double limbToDetail, double limbToPhysics) {}

    /** How dispersion smears a frame's band. */
    record SmearObject(double lengthPx, double lengthArcsec, double directionDeg) {
        static SmearObject of(FrameResult f) {
            double lengthPx = f.smear().lengthPx();
            return new SmearObject(
                    lengthPx,
                    lengthPx * AtmosphericDispersion.arcsecPerPx(f.exposure().aspect(), f.disk()),
                    f.smear() == Smear.NONE ? Double.NaN : f.smear().directionDeg());
        }
    }
}

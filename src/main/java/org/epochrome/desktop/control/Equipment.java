package org.epochrome.desktop.control;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.OptionalDouble;
import org.epochrome.io.identify.NameClock;
import org.epochrome.io.identify.TimestampMeaning;

/**
 * What a user's capture program, telescope and camera have in common from night to night; null where it is not known.
 *
 * @param meaning which moment of the recording a time in a file name is
 * @param recordingS usual length of a recording, seconds
 * @param utcOffset how far the clock in file names is ahead of UTC, such as +02:00
 * @param apertureMm of the telescope, mm
 * @param focalLengthMm of the telescope with its lenses, mm
 * @param pixelUm width of the camera's pixels, micrometres
 */
public record Equipment(
        TimestampMeaning meaning,
        Double recordingS,
        String utcOffset,
        Double apertureMm,
        Double focalLengthMm,
        Double pixelUm) {
    /** Nothing is known. */
    public static final Equipment UNKNOWN = new Equipment(null, null, null, null, null, null);

    /** Arcseconds in a radian, by a thousand for micrometres on millimetres. */
    private static final double ARCSEC_PER_UM_ON_MM = 206.264806;

    /** What it says about times in file names. */
    @JsonIgnore
    public NameClock clock() {
        return new NameClock(
                Optional.ofNullable(meaning),
                Optional.ofNullable(recordingS).map(s -> Duration.ofMillis(Math.round(1000 * s))),
                utcOffset == null ? ZoneOffset.UTC : ZoneOffset.of(utcOffset));
    }

    /** The nominal plate scale, arcsec per pixel; empty if focal length or pixels are not known. */
    @JsonIgnore
    public OptionalDouble scaleArcsecPerPx() {
        return focalLengthMm == null || pixelUm == null
                ? OptionalDouble.empty()
                : OptionalDouble.of(ARCSEC_PER_UM_ON_MM * pixelUm / focalLengthMm);
    }
}

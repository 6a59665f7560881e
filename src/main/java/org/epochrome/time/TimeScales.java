package org.epochrome.time;

import java.time.Instant;

/**
 * From UTC to the scales that ephemerides run on.
 *
 * <p>TT = UTC + (TAI - UTC) + 32.184 s from 1972 on, exact while {@link LeapSeconds#covers}. Before 1972 UTC is taken
 * as UT1 and TT = UT1 + Delta T by {@link DeltaT}, good to about a second since 1900.
 *
 * <p>TDB stands for TT throughout Epochrome: they differ by 1.7 ms at most, by which Saturn turns 0.00002 degrees. UT1
 * stands for UTC since 1972: they differ by 0.9 s at most, by which the Earth turns 0.004 degrees.
 */
public final class TimeScales {
    private static final double TT_MINUS_TAI_S = 32.184;
    private static final double DAY_S = 86400.0;

    /** 2000-01-01T12:00:00. */
    private static final long J2000_EPOCH_S = 946728000L;

    private TimeScales() {}

    /** TT - UTC in seconds. */
    public static double ttMinusUtcS(Instant utc) {
        if (utc.isBefore(LeapSeconds.validFrom())) {
            return DeltaT.seconds(utc);
        }
        return LeapSeconds.taiMinusUtcS(utc) + TT_MINUS_TAI_S;
    }

    /** Days of TT since J2000.0 (2000-01-01T12:00:00 TT = JD 2451545.0), to better than a microsecond. */
    public static double ttDaysSinceJ2000(Instant utc) {
        return ut1DaysSinceJ2000(utc) + ttMinusUtcS(utc) / DAY_S;
    }

    /** Days of UT1 (taken as UTC) since 2000-01-01T12:00:00 UT1 = JD 2451545.0. */
    public static double ut1DaysSinceJ2000(Instant utc) {
        return (utc.getEpochSecond() - J2000_EPOCH_S + 1e-9 * utc.getNano()) / DAY_S;
    }
}

package org.epochrome.disk.model;

/** Numbers of the shape parameters, the last unknowns of the fit's equations; lengths in sample pixels, angles in radians. */
public final class Unknowns {
    public static final int X = 0;

    public static final int Y = 1;
    public static final int RADIUS = 2;
    public static final int NORTH = 3;
    public static final int MINNAERT = 4;
    public static final int BLUR = 5;
    public static final int BRIGHTENING = 6;
    /** What of the band's light differs from what is assumed: {@link SmearModel#at}. */
    public static final int SMEAR_WIDTH = 7;

    public static final int SMEAR_TILT = 8;
    /** By how much of itself the polar radius of the visible limb exceeds the body's: see {@link PolarHaze}. */
    public static final int POLES = 9;

    public static final int SKY = 10;
    /** Slopes of the sky, per half width of the samples. */
    public static final int SKY_RIGHT = 11;

    public static final int SKY_DOWN = 12;
    /** Parts of the light that wings spread, the first of {@link Surroundings#WINGS}. */
    public static final int WINGS = 13;

    public static final int SHAPE = WINGS + Surroundings.WINGS;

    private Unknowns() {}
}

package org.epochrome.demo.world;

/**
 * Random numbers that are a function of seed and index: the same on every platform, in any order, on any thread. The
 * mixing function is that of SplitMix64 (Steele, Lea and Flood 2014, "Fast splittable pseudorandom number generators",
 * figure 16).
 */
public final class Dice {
    private static final long GOLDEN_GAMMA = 0x9E3779B97F4A7C15L;

    private final long origin;
    private long drawn;

    public Dice(long seed) {
        this.origin = mix(seed + GOLDEN_GAMMA);
    }

    /** Dice of their own for a part of the work. */
    Dice fork(int part) {
        return new Dice(bits(~(long) part));
    }

    /** 64 random bits of that index. */
    long bits(long index) {
        return mix(origin + (index + 1) * GOLDEN_GAMMA);
    }

    /** The next number between 0 and 1. */
    double next() {
        return unit(bits(drawn++));
    }

    double next(double from, double to) {
        return from + (to - from) * next();
    }

    /** A normal deviate of that index (Box and Muller 1958). */
    public double normal(long index) {
        double radius = Math.sqrt(-2 * StrictMath.log(1 - unit(bits(2 * index))));
        return radius * StrictMath.cos(2 * Math.PI * unit(bits(2 * index + 1)));
    }

    /** A quick stand-in for a normal deviate of that index: the sum of four uniform ones, unit variance. */
    float nearlyNormal(long index) {
        long bits = bits(index);
        long sum = (bits & 0xFFFF) + (bits >>> 16 & 0xFFFF) + (bits >>> 32 & 0xFFFF) + (bits >>> 48);
        return (float) ((sum / 65536.0 - 2) * 1.7320508075688772); // the variance of the sum is 4/12
    }

    private static double unit(long bits) {
        return (bits >>> 11) * 0x1p-53;
    }

    private static long mix(long bits) {
        long z = (bits ^ (bits >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }
}

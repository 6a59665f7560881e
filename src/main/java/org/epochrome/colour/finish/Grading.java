package org.epochrome.colour.finish;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.epochrome.choice.Choice;
import org.epochrome.choice.Choices;
import org.epochrome.colour.Gains;
import org.epochrome.text.Message;

/**
 * What is changed in finished pictures by hand, channel by channel; the usual one changes nothing.
 *
 * @param gains factors for linear red, green and blue before the tone, on top of the white balance
 * @param offsets what is added to them
 * @param levels black, middle and white of the finished picture, by {@code all}, {@code red}, {@code green} or {@code blue};
 *     first those of all, then those of the channel
 * @param curve on the values after that
 */
public record Grading(
        @Choice(key = "channelGains") Gains gains,
        @Choice(key = "channelOffsets") ChannelOffsets offsets,
        @Choice Map<String, LevelPoints> levels,
        @Choice(key = "toneCurve") ToneCurve curve)
        implements Choices<Grading> {
    /** Changes nothing. */
    public static final Grading NONE = new Grading(Gains.NONE, ChannelOffsets.NONE, Map.of(), ToneCurve.NONE);

    /** Stands for red, green and blue together. */
    public static final String ALL = "all";

    /** The channels, in the order of the planes. */
    public static final List<String> CHANNELS = List.of("red", "green", "blue");

    private static final int STEPS = 4096;

    public Grading {
        levels = Map.copyOf(levels);
        for (String name : levels.keySet()) {
            if (!name.equals(ALL) && !CHANNELS.contains(name)) {
                throw new IllegalArgumentException(Message.text("value.channel", name));
            }
        }
    }

    /** The levels of a channel or of all. */
    public LevelPoints levelsOf(String channel) {
        return levels.getOrDefault(channel, LevelPoints.NONE);
    }

    /** This grading with other levels of a channel or of all. */
    public Grading with(String channel, LevelPoints points) {
        Map<String, LevelPoints> next = new java.util.TreeMap<>(levels);
        if (points.equals(LevelPoints.NONE)) {
            next.remove(channel);
        } else {
            next.put(channel, points);
        }
        return with(Grading::levels, next);
    }

    /** Whether linear light stays as it is. */
    boolean leavesLight() {
        return gains.equals(Gains.NONE) && offsets.equals(ChannelOffsets.NONE);
    }

    /**
     * Changes linear light, in place.
     *
     * @param brightest the brightest part of the disk on the scale of the colour
     */
    void light(double[] colour, double brightest) {
        colour[0] = gains.red() * colour[0] + offsets.red() * brightest;
        colour[1] = gains.green() * colour[1] + offsets.green() * brightest;
        colour[2] = gains.blue() * colour[2] + offsets.blue() * brightest;
    }

    /** What values of a channel become, in even steps from 0 to 1; empty if they stay as they are. */
    float[] table(int channel) {
        Set<String> names = Set.of(ALL, CHANNELS.get(channel));
        if (curve.equals(ToneCurve.NONE) && levels.keySet().stream().noneMatch(names::contains)) {
            return new float[0];
        }
        float[] table = new float[STEPS + 1];
        for (int i = 0; i <= STEPS; i++) {
            double value = levelsOf(CHANNELS.get(channel)).of(levelsOf(ALL).of((double) i / STEPS));
            table[i] = (float) Math.max(0, Math.min(1, curve.of(value)));
        }
        return table;
    }

    /** A value by such a table. */
    static float of(float[] table, float value) {
        if (table.length == 0) {
            return value;
        }
        float place = STEPS * Math.max(0, Math.min(1, value));
        int below = Math.min(STEPS - 1, (int) place);
        return table[below] + (place - below) * (table[below + 1] - table[below]);
    }
}

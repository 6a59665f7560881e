package org.epochrome.ephemeris.body;

import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import org.epochrome.ephemeris.body.PeriodicAngle.Argument;

/**
 * Where the north pole points in ICRS and how the prime meridians of the longitude systems turn.
 *
 * @param poleRightAscension rate in a century, sines
 * @param poleDeclination rate in a century, cosines
 * @param meridians by the key of their longitude system, that of the body-fixed frame first
 */
public record Rotation(
        PeriodicAngle poleRightAscension, PeriodicAngle poleDeclination, Map<String, Meridian> meridians) {

    /**
     * Prime meridian of a longitude system.
     *
     * @param angle W, from the node of the body's equator on the ICRS equator: rate in a day, sines
     * @param source what to cite
     */
    public record Meridian(PeriodicAngle angle, String source) {}

    public Rotation {
        meridians = Collections.unmodifiableMap(new LinkedHashMap<>(meridians));
    }

    static Rotation of(FactsFile file) {
        Map<String, Argument> arguments = new HashMap<>();
        for (String name : file.endings("argument.")) {
            arguments.put(name, file.argument("argument." + name));
        }
        Map<String, Meridian> meridians = new LinkedHashMap<>();
        for (String system : file.words("meridian.systems")) {
            String key = "meridian." + system;
            meridians.put(system, new Meridian(file.angle(key, "d", "sin", arguments), file.text(key + ".source")));
        }
        return new Rotation(
                file.angle("pole.rightAscension", "T", "sin", arguments),
                file.angle("pole.declination", "T", "cos", arguments),
                meridians);
    }

    /** Whether the body turns eastward about its IAU north pole. */
    public boolean prograde() {
        return meridians.values().iterator().next().angle().rateDeg() > 0;
    }
}

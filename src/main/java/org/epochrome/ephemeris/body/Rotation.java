package org.epochrome.ephemeris.body;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
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
        Map<String, Argument> arguments = new TreeMap<>();
        for (String name : file.endings("argument.")) {
            arguments.put(name, file.parsed("argument." + name, Argument::parse));
        }
        Map<String, Meridian> meridians = new LinkedHashMap<>();
        List<String> systems = file.words("meridian.systems");
        for (String system : systems) {
            String key = "meridian." + system;
            meridians.put(
                    system,
                    new Meridian(
                            file.parsed(key, f -> PeriodicAngle.parse(f, "d", "sin", arguments)),
                            file.text(key + ".source")));
        }
        return new Rotation(
                file.parsed("pole.rightAscension", f -> PeriodicAngle.parse(f, "T", "sin", arguments)),
                file.parsed("pole.declination", f -> PeriodicAngle.parse(f, "T", "cos", arguments)),
                meridians);
    }

    /** Whether the body turns eastward about its IAU north pole. */
    public boolean prograde() {
        return meridians.values().iterator().next().angle().rateDeg() > 0;
    }
}

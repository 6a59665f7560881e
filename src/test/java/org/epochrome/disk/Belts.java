package org.epochrome.disk;

import org.epochrome.demo.world.AlbedoMap;

/** A surface with belts, zones and some ovals, quick to make. */
public final class Belts {
    private Belts() {}

    public static AlbedoMap map() {
        return AlbedoMap.of(360, 180, (latitude, longitude) -> {
            double lat = Math.toRadians(latitude);
            double lon = Math.toRadians(longitude);
            double belts = 0.16 * Math.cos(9 * lat) + 0.06 * Math.sin(17 * lat);
            double ovals = 0.05 * Math.sin(11 * lon) * Math.exp(-Math.pow((latitude + 22) / 6, 2));
            double wisps = 0.03 * Math.sin(23 * lon + 4 * lat) * Math.cos(31 * lat);
            return 0.75 + belts + ovals + wisps;
        });
    }
}

package org.epochrome.plan.night;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.epochrome.text.Message;

/**
 * The altitude up to which a site's view is obstructed, as it appears there (with refraction), degrees.
 *
 * @param azimuthDeg of the profile's points, growing, from north through east, 0 to below 360; never empty
 * @param altitudeDeg apparent altitude at each, -1 to 90
 */
public record Horizon(List<Double> azimuthDeg, List<Double> altitudeDeg) {
    private static final double LOWEST_DEG = -1;
    private static final Pattern SEPARATOR = Pattern.compile("\\s*[,;\t]\\s*");

    public Horizon {
        azimuthDeg = List.copyOf(azimuthDeg);
        altitudeDeg = List.copyOf(altitudeDeg);
        if (azimuthDeg.isEmpty() || azimuthDeg.size() != altitudeDeg.size()) {
            throw new IllegalArgumentException(Message.text("night.horizon.empty"));
        }
        for (double altitude : altitudeDeg) {
            if (!(altitude >= LOWEST_DEG && altitude <= 90)) {
                throw new IllegalArgumentException(Message.text("night.horizon.altitude", altitude));
            }
        }
    }

    /**
     * The same altitude all round.
     *
     * @throws IllegalArgumentException one sentence for the user
     */
    public static Horizon level(double altitudeDeg) {
        return new Horizon(List.of(0.0), List.of(altitudeDeg));
    }

    /**
     * A profile from the lines of a CSV file: azimuth and altitude in degrees, in any order. A header, empty lines and lines that
     * begin with {@code #} are skipped.
     *
     * @throws IllegalArgumentException one sentence for the user
     */
    public static Horizon parse(List<String> lines) {
        Map<Double, Double> points = new TreeMap<>();
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i).strip();
            boolean header = points.isEmpty() && line.toLowerCase(Locale.ROOT).startsWith("az");
            if (!line.isEmpty() && !line.startsWith("#") && !header) {
                double[] point = point(line, i + 1);
                if (points.put(point[0] % 360, point[1]) != null && point[0] != 360) {
                    throw new IllegalArgumentException(Message.text("night.horizon.twice", i + 1, point[0]));
                }
            }
        }
        return new Horizon(new ArrayList<>(points.keySet()), new ArrayList<>(points.values()));
    }

    private static double[] point(String line, int number) {
        String[] cells = SEPARATOR.split(line, -1);
        try {
            double azimuth = Double.parseDouble(cells[0]);
            if (cells.length == 2 && azimuth >= 0 && azimuth <= 360) {
                return new double[] {azimuth, Double.parseDouble(cells[1])};
            }
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(Message.text("night.horizon.line", number, line), e);
        }
        throw new IllegalArgumentException(Message.text("night.horizon.line", number, line));
    }

    /** The obstruction's apparent altitude in a direction, degrees; linear between the points, also through north. */
    public double altitudeDeg(double azimuthDeg) {
        int next = 0;
        while (next < this.azimuthDeg.size() && this.azimuthDeg.get(next) <= azimuthDeg) {
            next++;
        }
        int count = this.azimuthDeg.size();
        int before = (next + count - 1) % count;
        int after = next % count;
        double from = this.azimuthDeg.get(before);
        double width = this.azimuthDeg.get(after) - from;
        width = width <= 0 ? width + 360 : width;
        double since = azimuthDeg - from;
        since = since < 0 ? since + 360 : since;
        double part = since / width;
        return (1 - part) * altitudeDeg.get(before) + part * altitudeDeg.get(after);
    }
}

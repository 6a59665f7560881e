package org.epochrome.bench;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.FloatBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.concurrent.ForkJoinPool;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Spline;
import org.epochrome.job.Rows;

/**
 * Times the resampling of a plane at places that are given; {@code src/bench/ratios.py} starts it.
 *
 * <p>Arguments: a file with a plane, the columns and the rows (32-bit floats, little-endian), width, height, rounds. For one
 * thread and for two it prints the median of the elapsed and the mean of the processor time of a round, nanoseconds per pixel, without and
 * with the computation of the spline's coefficients. As many rounds before let Java compile and are not counted.
 */
public final class RemapTime {
    private RemapTime() {}

    public static void main(String[] args) throws IOException {
        int width = Integer.parseInt(args[1]);
        int height = Integer.parseInt(args[2]);
        int rounds = Integer.parseInt(args[3]);
        FloatBuffer numbers = ByteBuffer.wrap(Files.readAllBytes(Path.of(args[0])))
                .order(ByteOrder.LITTLE_ENDIAN)
                .asFloatBuffer();
        Plane plane = new Plane(width, height);
        float[] columns = new float[width * height];
        float[] rows = new float[width * height];
        numbers.get(plane.data()).get(columns).get(rows);
        Spline spline = new Spline(plane);
        for (int threads = 1; threads <= 2; threads++) {
            ForkJoinPool pool = new ForkJoinPool(threads);
            double[] alone = times(pool, rounds, () -> remap(spline, columns, rows));
            double[] whole = times(pool, rounds, () -> remap(new Spline(plane), columns, rows));
            pool.shutdown();
            System.out.printf(
                    Locale.ROOT,
                    "%d %.3f %.3f %.3f %.3f%n",
                    threads,
                    alone[0] / plane.data().length,
                    alone[1] / plane.data().length,
                    whole[0] / plane.data().length,
                    whole[1] / plane.data().length);
        }
    }

    private static Plane remap(Spline spline, float[] columns, float[] rows) {
        int width = spline.width();
        Plane result = new Plane(width, spline.height());
        Rows.each(spline.height(), (from, to) -> {
            for (int i = from * width; i < to * width; i++) {
                result.data()[i] = spline.at(columns[i], rows[i]);
            }
        });
        return result;
    }

    /** Median of the elapsed and mean of the processor time, ns: the clock of the latter is too coarse for a single round. */
    private static double[] times(ForkJoinPool pool, int rounds, Runnable work) {
        OperatingSystemMXBean system = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
        for (int i = 0; i < rounds; i++) {
            pool.submit(work).join();
        }
        long[] elapsed = new long[rounds];
        long processor = system.getProcessCpuTime();
        for (int i = 0; i < rounds; i++) {
            long clock = System.nanoTime();
            pool.submit(work).join();
            elapsed[i] = System.nanoTime() - clock;
        }
        double used = system.getProcessCpuTime() - processor;
        Arrays.sort(elapsed);
        return new double[] {elapsed[rounds / 2], used / rounds};
    }
}

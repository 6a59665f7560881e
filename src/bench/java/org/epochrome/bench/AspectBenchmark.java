package org.epochrome.bench;

import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.ephemeris.Site;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** One aspect, warm: what every frame, and every step of the planner, costs. Aim: below 50 microseconds. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 3, time = 1)
@Fork(1)
public class AspectBenchmark {
    private static final Optional<Site> SITE = Optional.of(new Site(46.2, 8.5, 480));

    @Param({"MARS", "JUPITER", "SATURN"})
    public Body body;

    private Instant instant = Instant.parse("2024-12-18T19:24:30Z");

    @Benchmark
    public Aspect aspect() {
        instant = instant.plusSeconds(60);
        return Ephemeris.aspect(body, instant, SITE);
    }
}

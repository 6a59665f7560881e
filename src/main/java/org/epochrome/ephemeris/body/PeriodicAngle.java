package org.epochrome.ephemeris.body;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.StringTokenizer;

/**
 * An angle that grows evenly, with periodic terms, as the reports of the IAU working group give them.
 *
 * @param constantDeg at J2000.0
 * @param rateDeg degrees in the unit of time of its formula: a Julian century (T) or a day (d)
 * @param terms in the order of the formula
 */
public record PeriodicAngle(double constantDeg, double rateDeg, List<Term> terms) {
    private static final double DAYS_PER_CENTURY = 36525.0;

    public PeriodicAngle {
        terms = List.copyOf(terms);
    }

    /**
     * Sine or cosine of an argument.
     *
     * @param amplitudeDeg its factor
     * @param argument what it is taken of
     */
    public record Term(double amplitudeDeg, Argument argument) {
        /** The argument at a time, in Julian centuries since J2000.0. */
        public double argumentRad(double centuries) {
            return Math.toRadians(argument.phaseDeg + argument.rateDegPerCentury * centuries);
        }
    }

    /**
     * Argument of periodic terms.
     *
     * @param phaseDeg at J2000.0
     * @param rateDegPerCentury degrees in a Julian century
     */
    public record Argument(double phaseDeg, double rateDegPerCentury) {
        /**
         * Reads an argument such as {@code 99.360714 + 4850.4046 T}, in which d instead of T counts days.
         *
         * @throws IllegalArgumentException if it is no such formula; the message says what is wrong
         */
        static Argument parse(String formula) {
            StringTokenizer words = new StringTokenizer(formula);
            double phase = number(words);
            double rate = sign(next(words)) * number(words);
            String unit = next(words);
            if (!unit.equals("T") && !unit.equals("d")) {
                throw new IllegalArgumentException("'" + unit + "' is neither T nor d");
            }
            if (words.hasMoreTokens()) {
                throw new IllegalArgumentException("nothing may follow " + unit);
            }
            return new Argument(phase, unit.equals("d") ? rate * DAYS_PER_CENTURY : rate);
        }
    }

    /**
     * Reads a formula such as {@code 64.495303 + 0.002413 T + 0.000050 cos Ja}; signs and words have blanks around them.
     *
     * @param unit T for centuries or d for days
     * @param function sin or cos
     * @param arguments by the names that the formula uses
     * @throws IllegalArgumentException if it is no such formula; the message says what is wrong
     */
    static PeriodicAngle parse(String formula, String unit, String function, Map<String, Argument> arguments) {
        StringTokenizer words = new StringTokenizer(formula);
        double constant = number(words);
        double rate = 0;
        List<Term> terms = new ArrayList<>();
        while (words.hasMoreTokens()) {
            double factor = sign(words.nextToken()) * number(words);
            String kind = next(words);
            if (kind.equals(unit)) {
                rate = factor;
            } else if (kind.equals(function)) {
                String name = next(words);
                if (!arguments.containsKey(name)) {
                    throw new IllegalArgumentException("there is no argument." + name);
                }
                terms.add(new Term(factor, arguments.get(name)));
            } else {
                throw new IllegalArgumentException("'" + kind + "' is neither " + unit + " nor " + function);
            }
        }
        return new PeriodicAngle(constant, rate, terms);
    }

    private static String next(StringTokenizer words) {
        if (!words.hasMoreTokens()) {
            throw new IllegalArgumentException("the formula is not complete");
        }
        return words.nextToken();
    }

    private static int sign(String word) {
        if (!word.equals("+") && !word.equals("-")) {
            throw new IllegalArgumentException("'" + word + "' stands where + or - is expected");
        }
        return word.equals("+") ? 1 : -1;
    }

    private static double number(StringTokenizer words) {
        String word = next(words);
        try {
            return Double.parseDouble(word);
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException("'" + word + "' is not a number", e);
        }
    }
}

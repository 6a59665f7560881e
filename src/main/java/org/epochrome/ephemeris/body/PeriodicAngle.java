package org.epochrome.ephemeris.body;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;

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
            boolean daily = formula.endsWith(" d");
            PeriodicAngle angle = PeriodicAngle.parse(formula, daily ? "d" : "T", "", Map.of());
            return new Argument(angle.constantDeg, daily ? angle.rateDeg * DAYS_PER_CENTURY : angle.rateDeg);
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
        Iterator<String> words = List.of(formula.strip().split("\\s+")).iterator();
        double constant = number(words);
        double rate = 0;
        List<Term> terms = new ArrayList<>();
        while (words.hasNext()) {
            double factor = sign(words.next()) * number(words);
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

    private static String next(Iterator<String> words) {
        if (!words.hasNext()) {
            throw new IllegalArgumentException("the formula is not complete");
        }
        return words.next();
    }

    private static int sign(String word) {
        if (!word.equals("+") && !word.equals("-")) {
            throw new IllegalArgumentException("'" + word + "' stands where + or - is expected");
        }
        return word.equals("+") ? 1 : -1;
    }

    private static double number(Iterator<String> words) {
        String word = next(words);
        try {
            return Double.parseDouble(word);
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException("'" + word + "' is not a number", e);
        }
    }
}

package org.epochrome.atmosphere;

import org.epochrome.choice.Choice;
import org.epochrome.choice.Choices;
import org.epochrome.text.Message;

/**
 * The air at a site.
 *
 * @param pressureHpa 10 to 1200, as the barometer on the spot reads (not reduced to sea level)
 * @param temperatureC -80 to 60
 * @param relativeHumidity 0 to 1
 */
public record Air(
        @Choice(option = "pressure") double pressureHpa,
        @Choice(option = "temperature") double temperatureC,
        @Choice(option = "humidity") double relativeHumidity)
        implements Choices<Air> {
    /** Common practice for an evening's observing, no source. */
    private static final double USUAL_TEMPERATURE_C = 10;

    private static final double USUAL_HUMIDITY = 0.4;

    public Air {
        if (!(pressureHpa >= 10 && pressureHpa <= 1200)) {
            throw new IllegalArgumentException(Message.text("value.pressure", pressureHpa));
        }
        if (!(temperatureC >= -80 && temperatureC <= 60)) {
            throw new IllegalArgumentException(Message.text("value.temperature", temperatureC));
        }
        if (!(relativeHumidity >= 0 && relativeHumidity <= 1)) {
            throw new IllegalArgumentException(Message.text("value.humidity", relativeHumidity));
        }
    }

    /**
     * What to assume when nobody measured: the pressure of the ICAO standard atmosphere at that height, 10 degrees Celsius,
     * 40 % humidity.
     *
     * @param heightM above sea level, -500 to 10000
     */
    public static Air standardAt(double heightM) {
        return new Air(1013.25 * Math.pow(1 - 2.25577e-5 * heightM, 5.25588), USUAL_TEMPERATURE_C, USUAL_HUMIDITY);
    }

    double temperatureK() {
        return temperatureC + 273.15;
    }

    double pressurePa() {
        return pressureHpa * 100;
    }
}

package org.epochrome.command.option;

import org.epochrome.ephemeris.Site;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** A site written as LAT,LON or LAT,LON,HEIGHT. */
final class SiteText implements ITypeConverter<Site> {
    @Override
    public Site convert(String text) {
        String[] parts = text.split(",", -1);
        if (parts.length < 2 || parts.length > 3) {
            throw new TypeConversionException("'" + text
                    + "' is not a site; write LAT,LON or LAT,LON,HEIGHT, such as 46.2,8.5,480 (degrees, east"
                    + " positive, m)");
        }
        try {
            double height = parts.length == 3 ? Double.parseDouble(parts[2].strip()) : 0;
            return new Site(Double.parseDouble(parts[0].strip()), Double.parseDouble(parts[1].strip()), height);
        } catch (NumberFormatException e) {
            throw new TypeConversionException(
                    "'" + text + "' is not a site: its parts must be numbers in degrees and m");
        } catch (IllegalArgumentException e) {
            throw new TypeConversionException(e.getMessage());
        }
    }
}

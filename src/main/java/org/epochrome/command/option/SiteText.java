package org.epochrome.command.option;

import org.epochrome.ephemeris.Site;
import org.epochrome.text.Message;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** A site written as LAT,LON or LAT,LON,HEIGHT. */
final class SiteText implements ITypeConverter<Site> {
    @Override
    public Site convert(String text) {
        String[] parts = text.split(",", -1);
        if (parts.length < 2 || parts.length > 3) {
            throw new TypeConversionException(Message.text("typed.site", text));
        }
        try {
            double height = parts.length == 3 ? Double.parseDouble(parts[2].strip()) : 0;
            return new Site(Double.parseDouble(parts[0].strip()), Double.parseDouble(parts[1].strip()), height);
        } catch (NumberFormatException e) {
            throw new TypeConversionException(Message.text("typed.siteNumbers", text));
        } catch (IllegalArgumentException e) {
            throw new TypeConversionException(e.getMessage());
        }
    }
}

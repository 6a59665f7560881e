package org.epochrome.image;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * The light an image was taken in: a short name and the passband behind it.
 *
 * @param name R, G, B, L, IR, UV, CH4 or a name of the user's
 * @param passband wavelengths let through
 */
public record Band(String name, Passband passband) {
    public static final Band R = new Band("R", new Passband(600, 690));
    public static final Band G = new Band("G", new Passband(500, 580));
    public static final Band B = new Band("B", new Passband(400, 500));
    public static final Band L = new Band("L", new Passband(400, 690));
    public static final Band IR = new Band("IR", new Passband(750, 950));
    public static final Band UV = new Band("UV", new Passband(320, 400));
    public static final Band CH4 = new Band("CH4", new Passband(880, 898));

    /** The bands that Epochrome knows by name, with their usual passbands. */
    public static final List<Band> KNOWN = List.of(R, G, B, L, IR, UV, CH4);

    public Band {
        Objects.requireNonNull(name);
        Objects.requireNonNull(passband);
    }

    /** The known band of that short name, whatever its case. */
    public static Optional<Band> known(String name) {
        String wanted = name.strip().toUpperCase(Locale.ROOT);
        return KNOWN.stream().filter(b -> b.name.equals(wanted)).findFirst();
    }

    /** This band with another passband. */
    public Band through(Passband other) {
        return new Band(name, other);
    }
}

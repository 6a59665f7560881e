package org.epochrome.about;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * A library that the program contains. The list is {@code components.tsv} beside this class.
 *
 * @param name for people
 * @param artifacts the names of its jars
 * @param licence its SPDX expression
 * @param copyright years and holder
 * @param texts names of the texts of its licence, beside this class
 */
public record Component(String name, List<String> artifacts, String licence, String copyright, List<String> texts) {
    /** All of them. */
    public static final List<Component> ALL =
            read("components.tsv").lines().skip(1).map(Component::row).toList();

    private static Component row(String line) {
        String[] cells = line.split("\t", -1);
        return new Component(cells[0], List.of(cells[1].split(" ")), cells[2], cells[3], List.of(cells[4].split(" ")));
    }

    /** A text of a licence. */
    static String text(String name) {
        return read("licences/" + name + ".txt");
    }

    private static String read(String resource) {
        try (InputStream in = Component.class.getResourceAsStream(resource)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

package org.epochrome.session.product;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.epochrome.choice.Choice;
import org.epochrome.choice.Choices;
import org.epochrome.text.Message;

/**
 * The files that are to be made.
 *
 * @param pictures pictures and cubes, the format by the suffix
 * @param tiffBits bits per sample of TIFF pictures: 16 for integers, 32 for floats
 * @param reports at most one .json for programs and one .html for people
 * @param map the globe as a map
 * @param turning the globe as an animation
 */
public record Products(
        @Choice(option = "out") List<Path> pictures,
        @Choice(option = "depth") int tiffBits,
        @Choice(option = "report") List<Path> reports,
        @Choice Optional<MapFile> map,
        @Choice Optional<TurningFile> turning)
        implements Choices<Products> {
    /** No file at all. */
    public static final Products NONE = new Products(List.of(), 16, List.of(), Optional.empty(), Optional.empty());

    private static final int FLOAT_BITS = 32;
    private static final String FOR_PEOPLE = ".html";

    public Products {
        if (tiffBits != 16 && tiffBits != FLOAT_BITS) {
            throw new IllegalArgumentException("tiffBits must be 16 or 32, not " + tiffBits);
        }
        pictures = List.copyOf(pictures);
        reports = List.copyOf(reports);
        long forPeople = reports.stream().filter(Products::forPeople).count();
        if (forPeople > 1 || reports.size() - forPeople > 1) {
            throw new IllegalArgumentException(Message.text("report.several", reports.get(reports.size() - 1)));
        }
    }

    private static boolean forPeople(Path file) {
        return file.toString().toLowerCase(java.util.Locale.ROOT).endsWith(FOR_PEOPLE);
    }

    /** Whether TIFF pictures hold 32-bit floats instead of 16-bit integers. */
    public boolean floats() {
        return tiffBits == FLOAT_BITS;
    }

    /** All of them. */
    public List<Path> files() {
        return Stream.of(
                        pictures.stream(),
                        reports.stream(),
                        map.stream().map(MapFile::file),
                        turning.stream().map(TurningFile::file))
                .flatMap(Function.identity())
                .toList();
    }

    /** The report for programs. */
    public Optional<Path> report() {
        return reports.stream().filter(f -> !forPeople(f)).findFirst();
    }

    /** The report for people. */
    public Optional<Path> evidence() {
        return reports.stream().filter(Products::forPeople).findFirst();
    }
}

package org.epochrome.session.product;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.epochrome.text.Message;

/**
 * The files that are to be made.
 *
 * @param pictures pictures and cubes, the format by the suffix
 * @param floats whether TIFF pictures hold 32-bit floats instead of 16-bit integers
 * @param reports at most one .json for programs and one .html for people
 * @param map the globe as a map
 * @param turning the globe as an animation
 */
public record Products(
        List<Path> pictures, boolean floats, List<Path> reports, Optional<MapFile> map, Optional<TurningFile> turning) {
    /** No file at all. */
    public static final Products NONE = new Products(List.of(), false, List.of(), Optional.empty(), Optional.empty());

    private static final String FOR_PEOPLE = ".html";

    public Products {
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

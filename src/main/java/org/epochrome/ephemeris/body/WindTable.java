package org.epochrome.ephemeris.body;

/**
 * Where the winds of a planet stand.
 *
 * @param resource name of their table, a resource beside the planetary series
 * @param source what to cite
 */
public record WindTable(String resource, String source) {
    static WindTable of(FactsFile file) {
        return new WindTable(file.text("wind.table"), file.text("wind.source"));
    }
}

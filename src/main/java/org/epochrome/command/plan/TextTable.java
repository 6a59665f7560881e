package org.epochrome.command.plan;

import java.util.ArrayList;
import java.util.List;

/** A table whose columns are as wide as what stands in them; cells on the right of their column. */
final class TextTable {
    private final List<List<String>> rows = new ArrayList<>();

    TextTable(List<String> heads) {
        rows.add(heads);
    }

    void row(List<String> cells) {
        rows.add(List.copyOf(cells));
    }

    void print(PlainPage page) {
        int columns = rows.get(0).size();
        int[] widths = new int[columns];
        for (List<String> row : rows) {
            for (int i = 0; i < columns; i++) {
                widths[i] = Math.max(widths[i], row.get(i).length());
            }
        }
        for (List<String> row : rows) {
            StringBuilder line = new StringBuilder();
            for (int i = 0; i < columns; i++) {
                line.append("  ")
                        .append(" ".repeat(widths[i] - row.get(i).length()))
                        .append(row.get(i));
            }
            page.println(line.toString());
        }
    }
}

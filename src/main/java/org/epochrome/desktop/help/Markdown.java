package org.epochrome.desktop.help;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Splits a document of this project, in the subset of Markdown that these use, into pieces to show. */
final class Markdown {
    private static final Pattern HEADING = Pattern.compile("(#{1,4})\\s+(.*)");
    private static final Pattern ITEM = Pattern.compile("(?:[-*]|\\d+\\.)\\s+(.*)");
    private static final Pattern LINK = Pattern.compile("!?\\[([^\\]]*)\\]\\([^)]*\\)");

    private Markdown() {}

    /** What a piece is. */
    enum Kind {
        TITLE,
        HEADING,
        TEXT,
        ITEM,
        CODE,
        ROW
    }

    /**
     * A piece.
     *
     * @param cells its text; of a row of a table several
     */
    record Piece(Kind kind, List<String> cells) {
        Piece {
            cells = List.copyOf(cells);
        }

        String text() {
            return cells.get(0);
        }
    }

    static List<Piece> pieces(List<String> lines) {
        List<Piece> pieces = new ArrayList<>();
        StringBuilder text = new StringBuilder();
        Kind kind = Kind.TEXT;
        for (String line : lines) {
            Matcher heading = HEADING.matcher(line);
            Matcher item = ITEM.matcher(line);
            boolean code = line.startsWith("    ") && (text.length() == 0 || kind == Kind.CODE);
            boolean begins = line.isBlank() || heading.matches() || item.matches() || line.startsWith("|");
            if (begins || (code != (kind == Kind.CODE) && text.length() > 0)) {
                end(pieces, kind, text);
                kind = Kind.TEXT;
            }
            if (heading.matches()) {
                boolean large = heading.group(1).length() < 3;
                pieces.add(new Piece(large ? Kind.TITLE : Kind.HEADING, List.of(plain(heading.group(2)))));
            } else if (line.startsWith("|")) {
                row(pieces, line);
            } else if (code) {
                kind = Kind.CODE;
                text.append(text.length() == 0 ? "" : "\n").append(line.substring(4));
            } else if (item.matches()) {
                kind = Kind.ITEM;
                text.append(item.group(1));
            } else if (!line.isBlank() && !line.startsWith("![")) {
                text.append(text.length() == 0 ? "" : " ").append(line.strip());
            }
        }
        end(pieces, kind, text);
        return pieces;
    }

    private static void row(List<Piece> pieces, String line) {
        List<String> cells = new ArrayList<>();
        for (String cell : line.substring(1, line.lastIndexOf('|')).split("\\|", -1)) {
            cells.add(plain(cell.strip()));
        }
        if (!cells.stream().allMatch(c -> c.matches("[-: ]+"))) {
            pieces.add(new Piece(Kind.ROW, cells));
        }
    }

    private static void end(List<Piece> pieces, Kind kind, StringBuilder text) {
        if (text.length() > 0) {
            pieces.add(new Piece(kind, List.of(kind == Kind.CODE ? text.toString() : plain(text.toString()))));
            text.setLength(0);
        }
    }

    private static String plain(String text) {
        return LINK.matcher(text)
                .replaceAll("$1")
                .replaceAll("\\*\\*([^*]+)\\*\\*|\\*([^*]+)\\*", "$1$2")
                .replace("`", "");
    }
}

package org.epochrome.io.file;

import java.util.Arrays;
import java.util.stream.Collectors;

/**
 * Words from file names, headers, sheets and sessions made fit to be printed: on a terminal control characters would move
 * the cursor, change colours or hide what stands before them.
 */
public final class VisibleText {
    /** Characters of a message; longer ones lose their middle. Some lines of a terminal. */
    private static final int LONGEST_MESSAGE = 800;

    private static final String GAP = " ... ";

    private VisibleText() {}

    /** One line in which characters that control a terminal or hide stand as marks such as \x1b. */
    public static String of(String text) {
        if (text.codePoints().noneMatch(VisibleText::isHidden)) {
            return text;
        }
        StringBuilder shown = new StringBuilder();
        text.codePoints().forEach(c -> {
            if (isHidden(c)) {
                shown.append(c < 0x100 ? String.format("\\x%02x", c) : String.format("\\u%04x", c));
            } else {
                shown.appendCodePoint(c);
            }
        });
        return shown.toString();
    }

    /** Lines in which characters that control a terminal or hide stand as marks; their ends stay. */
    public static String lines(String text) {
        return Arrays.stream(text.split("\n", -1)).map(VisibleText::of).collect(Collectors.joining("\n"));
    }

    /** A text with visible characters only, of limited length: beginning and end remain, which name the file and say what to do. */
    public static String message(String text) {
        String shown = of(text);
        int half = (LONGEST_MESSAGE - GAP.length()) / 2;
        return shown.length() <= LONGEST_MESSAGE
                ? shown
                : shown.substring(0, half) + GAP + shown.substring(shown.length() - half);
    }

    private static boolean isHidden(int c) {
        return switch (Character.getType(c)) {
            case Character.CONTROL,
                    Character.FORMAT,
                    Character.SURROGATE,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR -> true;
            default -> false;
        };
    }
}

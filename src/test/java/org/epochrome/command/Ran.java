package org.epochrome.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.epochrome.command.terminal.StandardOutput;

/**
 * A command line that was run, as a user sees it.
 *
 * @param code exit code
 * @param out standard output
 * @param err standard error
 */
public record Ran(int code, String out, String err) {

    public static Ran of(Object... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Ran ran = onto(out, args);
        return new Ran(ran.code, out.toString(StandardCharsets.UTF_8), ran.err);
    }

    /** With standard output to a file that may fail; what it was given is not told. */
    static Ran onto(OutputStream out, Object... args) {
        return onto(StandardOutput.FILE, out, args);
    }

    static Ran onto(StandardOutput kind, OutputStream out, Object... args) {
        PrintStream formerOut = System.out;
        PrintStream formerErr = System.err;
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int code;
        try (PrintStream o = new PrintStream(out, true, StandardCharsets.UTF_8);
                PrintStream e = new PrintStream(err, true, StandardCharsets.UTF_8)) {
            System.setOut(o);
            System.setErr(e);
            String[] words = new String[args.length];
            for (int i = 0; i < args.length; i++) {
                words[i] = args[i].toString();
            }
            code = Main.run(kind, words);
        } finally {
            System.setOut(formerOut);
            System.setErr(formerErr);
        }
        return new Ran(code, "", err.toString(StandardCharsets.UTF_8));
    }

    /** It failed with that code and said one sentence for each problem, in this order; each must hold the given words. */
    public void refuses(int expected, String... each) {
        assertEquals(expected, code, err);
        List<String> lines = err.lines().filter(line -> !isHint(line)).toList();
        assertEquals(each.length, lines.size(), err);
        for (int i = 0; i < each.length; i++) {
            String line = lines.get(i);
            for (String word : each[i].split("\\|", -1)) {
                assertTrue(line.contains(word), line + "  lacks  " + word);
            }
            assertTrue(line.endsWith("."), line);
            assertTrue(line.length() > 20, line);
            for (String machinery : List.of("Exception", "null", "java.", "at org.", "inside the program")) {
                assertFalse(line.contains(machinery), line);
            }
        }
    }

    /** Wrong usage is followed by where to read on. */
    private static boolean isHint(String line) {
        return line.matches("'epochrome( \\w+)? --help' explains\\.");
    }

    public void succeeds() {
        assertEquals(0, code, err);
        assertFalse(err.contains("at org."), err);
    }
}

package org.epochrome.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.epochrome.command.Ran;
import org.junit.jupiter.api.Test;

/** The options that documents for users name are options of the program. */
class OptionsInDocumentsTest {
    private static final Pattern OPTION = Pattern.compile("(?<![\\w-])--[a-z][a-z-]*[a-z]");

    @Test
    void namedOptionsExist() throws IOException {
        Set<String> known = new TreeSet<>();
        for (String command : new String[] {"combine", "inspect", "aspect", "plan", "demo"}) {
            known.addAll(options(Ran.of("help", command).out().replaceAll("--\\[no-\\]([a-z-]+)", "--$1 --no-$1")));
        }
        Set<String> unknown = new TreeSet<>();
        int named = 0;
        for (String document :
                new String[] {"README.md", "docs/guide.md", "docs/worked-sessions.md", "docs/session-file.md"}) {
            for (String option : options(Files.readString(Path.of(document)))) {
                named++;
                if (!known.contains(option)) {
                    unknown.add(document + ": " + option);
                }
            }
        }
        assertEquals(Set.of(), unknown);
        assertTrue(named > 60, named + " options");
    }

    private static Set<String> options(String text) {
        Set<String> options = new TreeSet<>();
        for (Matcher option = OPTION.matcher(text); option.find(); ) {
            options.add(option.group());
        }
        return options;
    }
}

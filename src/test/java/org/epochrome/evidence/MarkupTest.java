package org.epochrome.evidence;

import static org.epochrome.evidence.Markup.attribute;
import static org.epochrome.evidence.Markup.element;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class MarkupTest {
    private static final String ODD = "<b a=\"1\" c='2'>&amp;";
    private static final String SAFE = "&lt;b a=&quot;1&quot; c=&#39;2&#39;&gt;&amp;amp;";

    @Test
    void textAndAttributesAreEscaped() {
        assertEquals(
                "<p class=\"" + SAFE + "\">" + SAFE + "</p>",
                element("p", ODD, attribute("class", ODD)).toString());
        assertEquals(SAFE, Markup.of(ODD).toString());
    }

    @Test
    void piecesAreInsertedAsTheyAre() {
        Markup band = element("b", "R");
        assertEquals(
                "<td><b>R</b> 2 px</td>", element("td", band, " ", 2, " px").toString());
        assertEquals("<b>R</b><b>R</b>", Markup.all(List.of(band, band)).toString());
    }

    @Test
    void someElementsHaveNoContent() {
        assertEquals("<img alt=\"x\">", element("img", attribute("alt", "x")).toString());
        assertEquals(
                "<path d=\"M0 0\"/>", element("path", attribute("d", "M0 0")).toString());
        assertEquals("<span></span>", element("span").toString());
    }

    @Test
    void whatControlsOrHidesIsShown() {
        assertEquals(
                "<p title=\"\\u202eb\">a\\x1b[2J\nb</p>",
                element("p", attribute("title", "\u202eb"), "a\u001b[2J\nb").toString());
    }

    @Test
    void aPageDeclaresItsKindAndLanguage() {
        assertEquals(
                "<!DOCTYPE html>\n<html lang=\"en\"><head><style>\na > b {}</style></head><body>\n<p>&gt;</p></body></html>\n",
                Markup.page(element("head", Markup.style("a > b {}")), element("p", ">")));
    }

    /** HTML that is put together elsewhere would not be escaped. */
    @Test
    void noOtherClassWritesTags() throws IOException {
        Pattern tag = Pattern.compile("\"[^\"\\n]*</?[a-z]");
        try (Stream<Path> files = Files.walk(Path.of("src/main/java/org/epochrome/evidence"))) {
            assertEquals(
                    List.of(Path.of("Markup.java")),
                    files.filter(Files::isRegularFile)
                            .filter(f -> tag.matcher(source(f)).find())
                            .map(Path::getFileName)
                            .toList());
        }
    }

    private static String source(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}

package org.epochrome.io.identify;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.epochrome.image.Encoding;
import org.epochrome.io.Sentences;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.time.RecordingSpan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SheetTest {
    private static final RecordingSpan TWO_MINUTES =
            new RecordingSpan(Instant.parse("2031-05-02T21:14:05Z"), Instant.parse("2031-05-02T21:16:05Z"));

    @TempDir
    private Path folder;

    private Path sheet(String text) throws IOException {
        return Files.writeString(folder.resolve("night.csv"), text);
    }

    @Test
    void readsAPlainSheet() throws IOException {
        Sheet sheet = Sheet.read(sheet("""
                        file,band,start,end
                        r/jup.fits,R,2031-05-02T21:14:05Z,2031-05-02T21:16:05Z
                        g.fits,,,
                        """));
        assertEquals(
                List.of(
                        new SheetRow(
                                folder.resolve("r/jup.fits"),
                                Optional.of("R"),
                                Optional.of(TWO_MINUTES),
                                "sheet night.csv line 2"),
                        new SheetRow(
                                folder.resolve("g.fits"),
                                Optional.empty(),
                                Optional.empty(),
                                "sheet night.csv line 3")),
                sheet.rows());
        assertEquals(
                sheet.rows().get(1), sheet.rowFor(folder.resolve("r/../g.fits")).orElseThrow());
        assertEquals(Optional.empty(), sheet.rowFor(folder.resolve("b.fits")));
    }

    @Test
    void readsWhatSpreadsheetsWrite() throws IOException {
        String text = """
                # by hand

                "File";Interval;BAND
                "a; ""b"".fits" ; 2031-05-02T21:14:05Z/PT2M ; red

                # next
                ;;
                c.fits;;G
                """;
        Sheet sheet = Sheet.read(sheet("\ufeff" + text.replace("\n", "\r\n")));
        assertEquals(2, sheet.rows().size());
        assertEquals(folder.resolve("a; \"b\".fits"), sheet.rows().get(0).file());
        assertEquals(Optional.of(TWO_MINUTES), sheet.rows().get(0).span());
        assertEquals(Optional.of("red"), sheet.rows().get(0).band());
        assertEquals("sheet night.csv line 8", sheet.rows().get(1).source());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "start,end|2031-05-02T21:14:05Z,2031-05-02T21:16:05Z",
                "start,end|2031-05-02 21:14:05,2031-05-02 21:16:05",
                "start,end|2031-05-02T23:14:05+02:00,2031-05-02T21:16:05",
                "start,exposure|2031-05-02T21:14:05Z,PT2M",
                "start,exposure|2031-05-02T21:14:05Z,120",
                "mid,exposure|2031-05-02T21:15:05Z,120.0",
                "end,exposure|2031-05-02T21:16:05Z,PT2M",
                "interval|2031-05-02T21:14:05Z/2031-05-02T21:16:05Z",
                "interval|2031-05-02T21:14:05Z/PT120S",
                "interval|PT2M/2031-05-02T21:16:05Z",
                "interval,start,end|2031-05-02T21:14:05Z/pt2m,,",
            })
    void readsTimesInEveryForm(String form) throws IOException {
        String[] parts = form.split("\\|", -1);
        Sheet sheet = Sheet.read(sheet("file," + parts[0] + "\na.fits," + parts[1] + "\n"));
        assertEquals(Optional.of(TWO_MINUTES), sheet.rows().get(0).span());
    }

    @Test
    void aMidAloneIsAnInstant() throws IOException {
        RecordingSpan span = Sheet.read(sheet("file\tmid\na.fits\t2031-05-02T21:14Z\n"))
                .rows()
                .get(0)
                .span()
                .orElseThrow();
        assertEquals(Instant.parse("2031-05-02T21:14:00Z"), span.start());
        assertEquals(span.start(), span.end());
    }

    @Test
    void tellsHowFramesAreEncoded() throws IOException {
        List<SheetRow> rows = Sheet.read(sheet("file,encoding\na.fits,srgb\nb.fits,gamma=1.8\nc.fits,\n"))
                .rows();
        assertEquals(
                List.of(Optional.of(Encoding.SRGB), Optional.of(Encoding.power(1.8)), Optional.empty()),
                rows.stream().map(SheetRow::encoding).toList());
        FrameRefused refused = assertThrows(FrameRefused.class, () -> Sheet.read(sheet("file,encoding\na.fits,log\n")));
        assertTrue(refused.getMessage().contains("linear, srgb or gamma=X"), refused.getMessage());
    }

    @Test
    void tellsWhichFramesAreMirrored() throws IOException {
        Sheet sheet = Sheet.read(sheet("file,mirrored\na.fits,Yes\nb.fits,no\nc.fits,\n"));
        assertEquals(
                List.of(Optional.of(true), Optional.of(false), Optional.empty()),
                sheet.rows().stream().map(SheetRow::mirrored).toList());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "file,start,end|a.fits,2031-05-02T21:14:05Z,noon; line 2 cannot be used: 'noon' is not an instant",
                "file,start,end||a.fits,2031-05-02T21:14:05Z,; line 3 cannot be used: start and end",
                "file,start,end|a.fits,2031-05-02T21:14:05Z,2031-05-02T21:10:05Z; ends (2031-05-02T21:10:05Z) before",
                "file,start,exposure|a.fits,2031-05-02T21:14:05Z,-PT2M; is not a duration",
                "file,start,exposure|a.fits,2031-05-02T21:14:05Z,1.2.3; is not a duration",
                "file,exposure|a.fits,PT2M; gives no time",
                "file,start,mid,end|a.fits,2031-05-02T21:14Z,2031-05-02T21:15Z,2031-05-02T21:16Z; give only two",
                "file,interval|a.fits,2031-05-02T21:14:05Z; is not an interval",
                "file,interval|a.fits,PT2M/PT2M; no instant",
                "file,interval,start|a.fits,2031-05-02T21:14:05Z/PT2M,2031-05-02T21:14:05Z; not both",
                "file,mirrored|a.fits,yes|b.fits,maybe; line 3 cannot be used: mirrored is 'maybe'",
                "file,band|,R; line 2 cannot be used: it names no file",
                "file,band|a.fits,R|./a.fits,G; twice",
                "name,band|a.fits,R; no column 'file'",
                "file,strat|a.fits,2031-05-02T21:14:05Z; unknown column 'strat'",
                "file,band; lists no frames",
                "file,band|'\"a.fits,R'; not a valid CSV table",
                "''; no column 'file'",
            })
    void namesTheLineThatCannotBeUsed(String text, String reason) throws IOException {
        Path sheet = sheet(text.replace('|', '\n').replace("'\"", "\"").replace("R'", "R"));
        FrameRefused refused = assertThrows(FrameRefused.class, () -> Sheet.read(sheet));
        assertTrue(refused.getMessage().contains(reason), refused.getMessage());
        Sentences.assertSentence("night.csv", refused);
    }

    @Test
    void refusesWhatIsNoSheet() throws IOException {
        Path latin =
                Files.write(folder.resolve("latin.csv"), "file\nzo\u00eb.fits\n".getBytes(StandardCharsets.ISO_8859_1));
        for (Path file : List.of(folder, folder.resolve("absent.csv"), latin)) {
            Sentences.assertSentence(
                    file.getFileName().toString(), assertThrows(FrameRefused.class, () -> Sheet.read(file)));
        }
    }
}

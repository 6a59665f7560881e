package org.epochrome.io.file;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.DuplicateHeaderMode;
import org.epochrome.text.Message;

/**
 * Tables as people write them: commas, semicolons or tabs between the cells, UTF-8 with or without its mark; blank lines and
 * lines that begin with # are passed over.
 */
public final class CsvTable {
    private static final int LARGEST_BYTES = 10_000_000;

    private CsvTable() {}

    /**
     * A table whose first row names the columns.
     *
     * @throws FrameRefused if the file cannot be read
     */
    public static CSVParser withHeader(Path file) throws IOException {
        String text = text(file);
        return CSVParser.parse(
                text,
                common(text)
                        .builder()
                        .setHeader()
                        .setSkipHeaderRecord(true)
                        .setIgnoreHeaderCase(true)
                        .setAllowMissingColumnNames(true)
                        .setDuplicateHeaderMode(DuplicateHeaderMode.ALLOW_EMPTY)
                        .get());
    }

    /**
     * A table of rows alone.
     *
     * @throws FrameRefused if the file cannot be read
     */
    public static CSVParser headless(Path file) throws IOException {
        String text = text(file);
        return CSVParser.parse(text, common(text));
    }

    /**
     * The lines of a table as they stand in the file.
     *
     * @throws FrameRefused if the file cannot be read
     */
    public static List<String> lines(Path file) {
        return text(file).lines().toList();
    }

    private static CSVFormat common(String text) {
        return CSVFormat.DEFAULT
                .builder()
                .setDelimiter(delimiter(text))
                .setIgnoreSurroundingSpaces(true)
                .setIgnoreEmptyLines(true)
                .setCommentMarker('#')
                .get();
    }

    private static String text(Path file) {
        try {
            if (Files.isDirectory(file)) {
                throw new FrameRefused(file, Message.of("table.isFolder"));
            }
            if (Files.exists(file) && !Files.isRegularFile(file)) {
                throw new FrameRefused(file, Message.of("table.notRegular"));
            }
            byte[] bytes;
            try (InputStream in = Files.newInputStream(file)) {
                bytes = in.readNBytes(LARGEST_BYTES + 1);
            }
            if (bytes.length > LARGEST_BYTES) {
                throw new FrameRefused(file, Message.of("table.tooLarge"));
            }
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
            return text.startsWith("\ufeff") ? text.substring(1) : text;
        } catch (CharacterCodingException e) {
            throw new FrameRefused(file, Message.of("table.notUtf8"), e);
        } catch (NoSuchFileException e) {
            throw new FrameRefused(file, Message.of("file.absent"), e);
        } catch (IOException e) {
            throw new FrameRefused(file, Message.of("file.notReadable"), e);
        }
    }

    /** The sign that separates the columns of the header row. */
    private static char delimiter(String text) {
        String header = text.lines()
                .filter(line -> !line.isBlank() && !line.startsWith("#"))
                .findFirst()
                .orElse("");
        return header.indexOf(';') >= 0 ? ';' : header.indexOf('\t') >= 0 ? '\t' : ',';
    }
}

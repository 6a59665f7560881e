package org.epochrome.session.sessionfile;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import org.epochrome.image.Encoding;
import org.epochrome.io.identify.SheetRow;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.session.recipe.FileMark;
import org.epochrome.session.recipe.Frames;
import org.epochrome.session.recipe.FramesRefused;
import org.epochrome.session.recipe.ManualDisk;
import org.epochrome.text.Message;
import org.epochrome.time.RecordingSpan;

/**
 * What a session file contains about a frame; empty where nothing was chosen.
 *
 * @param band as typed
 * @param start of the recording, as typed; with {@code end} or not at all
 * @param source where the typed times come from, for reports
 * @param bytes length of the file when the session was saved
 * @param sha256 its checksum then
 */
record FrameEntry(
        Path file,
        Optional<String> band,
        Optional<Instant> start,
        Optional<Instant> end,
        Optional<String> source,
        Optional<Boolean> mirrored,
        Optional<Encoding> encoding,
        Optional<Boolean> leftOut,
        Optional<ManualDisk> disk,
        Optional<Long> bytes,
        Optional<String> sha256) {
    FrameEntry {
        if (start.isPresent() != end.isPresent()) {
            throw new IllegalArgumentException("start and end of " + file.getFileName() + " must be given together");
        }
    }

    static FrameEntry of(FrameRequest request, Optional<FileMark> mark, Frames frames) {
        Optional<SheetRow> row = request.row();
        return new FrameEntry(
                request.file(),
                row.flatMap(SheetRow::band).or(request::band),
                row.flatMap(SheetRow::span).map(RecordingSpan::start),
                row.flatMap(SheetRow::span).map(RecordingSpan::end),
                row.map(SheetRow::source),
                row.flatMap(SheetRow::mirrored),
                row.flatMap(SheetRow::encoding),
                Optional.of(frames.leftOut().contains(request.file())).filter(out -> out),
                Optional.ofNullable(frames.disks().get(request.file())),
                mark.map(FileMark::bytes),
                mark.map(FileMark::sha256));
    }

    FrameRequest request() {
        if (start.isEmpty() && source.isEmpty() && mirrored.isEmpty() && encoding.isEmpty()) {
            return new FrameRequest(file, band, Optional.empty());
        }
        Optional<RecordingSpan> span = start.map(first -> new RecordingSpan(first, end.orElseThrow()));
        SheetRow row = new SheetRow(file, band, span, mirrored, encoding, source.orElse("session"));
        return new FrameRequest(file, Optional.empty(), Optional.of(row));
    }

    /** What the file was when the session was saved. */
    Optional<FileMark> mark() {
        return bytes.flatMap(length -> sha256.map(sum -> new FileMark(length, sum)));
    }

    /** Why the frame cannot be used, one sentence. */
    Message problem(FramesRefused refused) {
        return Files.exists(file) ? refused.message() : Message.of("session.absent", file.getFileName());
    }

    /** Whether the file is not the one that was there when the session was saved. */
    boolean isChanged() {
        return sha256.filter(sum -> !sum.equalsIgnoreCase(FileMark.of(file).sha256()))
                .isPresent();
    }
}

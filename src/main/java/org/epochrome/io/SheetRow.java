package org.epochrome.io;

import java.nio.file.Path;
import java.util.Optional;
import org.epochrome.time.RecordingSpan;

/**
 * What a sheet says about one frame.
 *
 * @param file the frame, resolved against the folder of the sheet
 * @param band word for the band, empty if the sheet leaves it open
 * @param span start and end, empty if the sheet leaves them open
 * @param source the place of the row for people: "sheet night.csv line 3"
 */
public record SheetRow(Path file, Optional<String> band, Optional<RecordingSpan> span, String source) {}

package org.epochrome.io.read;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Band;
import org.epochrome.image.Encoding;
import org.epochrome.image.Plane;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.head.FrameFile;
import org.epochrome.io.head.FrameHead;
import org.epochrome.io.identify.BandChoice;
import org.epochrome.io.identify.SheetRow;
import org.epochrome.io.identify.Timing;
import org.epochrome.text.Message;

/**
 * A frame whose band and times are known and whose pixels are still in its file. Small, so that a session can hold any
 * number of them and load one at a time.
 *
 * @param request what the user asked for
 * @param head the description of the image in its file
 * @param band its band and how it is known
 * @param timing when it was recorded and how that is known
 * @param object the body that its header names, if any
 * @param encoding how its samples stand for light
 */
public record DatedFrame(
        FrameRequest request,
        FrameHead head,
        BandChoice band,
        Timing timing,
        Optional<Body> object,
        Encoding encoding) {
    private static final String EIGHT_BITS = "8-bit integer";

    /** A frame with linear samples. */
    public DatedFrame(FrameRequest request, FrameHead head, BandChoice band, Timing timing, Optional<Body> object) {
        this(request, head, band, timing, object, Encoding.LINEAR);
    }

    /** This frame with the encoding given for it alone or, if there is none, with a default one. */
    public DatedFrame encoded(Encoding usual) {
        return new DatedFrame(
                request, head, band, timing, object, givenEncoding().orElse(usual));
    }

    /** The encoding given for this frame alone, by sheet or option. */
    public Optional<Encoding> givenEncoding() {
        return request.row().flatMap(SheetRow::encoding);
    }

    /** Everything that a user should know so far, a sentence each. */
    public List<Message> notes() {
        List<Message> all = new ArrayList<>(head.notes());
        all.addAll(band.notes());
        all.addAll(timing.notes());
        encodingNote().ifPresent(all::add);
        return all;
    }

    private Optional<Message> encodingNote() {
        if (!encoding.isLinear()) {
            return Optional.of(Message.of("encoding.undone", encoding.word()));
        }
        // Many programs tag deep files that are linear; eight bits are rarely linear.
        return head.tagged()
                .filter(t -> head.depth().equals(EIGHT_BITS) && givenEncoding().isEmpty())
                .map(t -> Message.of("encoding.marked", t.word()));
    }

    /**
     * Reads the pixels.
     *
     * @throws FrameRefused if the file cannot be decoded, or holds colour where one band was expected
     */
    public Frame load() {
        FrameFile read = FrameReader.read(head.file());
        if (!read.head().equals(head)) {
            throw new FrameRefused(head.file(), Message.of("frame.changed"));
        }
        List<Message> notes = new ArrayList<>(read.notes());
        notes.addAll(band.notes());
        notes.addAll(timing.notes());
        encodingNote().ifPresent(notes::add);
        List<Plane> planes = band.band().isPresent() && read.planes().size() == 3
                ? List.of(single(band.band().get(), read.planes(), notes))
                : read.planes();
        return new Frame(
                head.file(),
                planes,
                band.band(),
                timing,
                object,
                read.head().fullScale(),
                read.head().depth(),
                notes);
    }

    /** Whether it is marked as mirrored, by sheet or option; empty if neither says anything. */
    public Optional<Boolean> givenMirrored() {
        return request.row().flatMap(SheetRow::mirrored);
    }

    /** The one plane meant by a band in a file of three: often they are equal, a grey image saved as colour. */
    private Plane single(Band wanted, List<Plane> planes, List<Message> notes) {
        if (equal(planes.get(0), planes.get(1)) && equal(planes.get(0), planes.get(2))) {
            notes.add(Message.of("frame.equalPlanes"));
            return planes.get(0);
        }
        int index = List.of("R", "G", "B").indexOf(wanted.name());
        if (!band.ordered() || index < 0) {
            throw new FrameRefused(head.file(), Message.of("band.colourFrame", wanted.name(), band.source()));
        }
        notes.add(Message.of(
                "frame.onePlaneUsed",
                Message.of(List.of("band.red", "band.green", "band.blue").get(index))));
        return planes.get(index);
    }

    private static boolean equal(Plane a, Plane b) {
        return Arrays.equals(a.data(), b.data());
    }
}

package org.epochrome.desktop.control;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.epochrome.desktop.state.Draft;
import org.epochrome.desktop.state.UnidentifiedFile;
import org.epochrome.desktop.state.UserMessages;
import org.epochrome.desktop.style.Texts;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.head.FrameHead;
import org.epochrome.io.identify.Conventions;
import org.epochrome.io.identify.NameClock;
import org.epochrome.io.identify.Sheet;
import org.epochrome.io.identify.SheetRow;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.io.read.FrameReader;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.session.product.Session;
import org.epochrome.session.recipe.Frames;
import org.epochrome.session.recipe.FramesRefused;
import org.epochrome.session.sessionfile.SessionFile;
import org.epochrome.text.Message;
import org.epochrome.text.Wording;

/** Finds out in the background what files are that come in. */
final class FrameImporter {
    private static final List<String> FRAMES =
            List.of(".fits", ".fit", ".fts", ".fits.gz", ".fits.fz", ".tif", ".tiff", ".png");

    /** Stacked pictures of planets are smaller; one that is not takes gigabytes. */
    private static final double MOST_MEGAPIXELS = 50;

    private final Executor background;
    private final Executor face;

    FrameImporter(Executor background, Executor face) {
        this.background = background;
        this.face = face;
    }

    /**
     * What came in.
     *
     * @param frames frames whose band and times are known
     * @param unsettled frames that must be asked about
     * @param session a session file's content
     * @param notes what could not be used, a sentence each
     */
    record Found(
            List<DatedFrame> frames, List<UnidentifiedFile> unsettled, Optional<Session> session, List<String> notes) {
        boolean isEmpty() {
            return frames.isEmpty() && unsettled.isEmpty();
        }

        String title() {
            int count = frames.size() + unsettled.size();
            return count == 1 ? Texts.of("step.addFrame") : Texts.of("step.addFrames", count);
        }
    }

    /** Opens files, folders, sheets, or a session. */
    void open(List<Path> files, Draft draft, NameClock clock, Consumer<Found> done) {
        Conventions conventions = conventions(draft, clock);
        background.execute(() -> {
            Found found = opened(files, conventions);
            dropCopies(found, draft);
            face.execute(() -> done.accept(found));
        });
    }

    /** Opens files with what is said about them, however large they are. */
    void ask(List<FrameRequest> requests, Draft draft, NameClock clock, Consumer<Found> done) {
        Conventions conventions = conventions(draft, clock);
        background.execute(() -> {
            Found found = new Found(new ArrayList<>(), new ArrayList<>(), Optional.empty(), new ArrayList<>());
            requests.forEach(r -> find(r, conventions, found));
            face.execute(() -> done.accept(found));
        });
    }

    /** Opens frames again with changes to several of them. */
    void change(List<DatedFrame> frames, FrameChanges changes, Draft draft, NameClock clock, Consumer<Found> done) {
        Conventions conventions = conventions(draft, clock);
        background.execute(() -> {
            Found found = new Found(new ArrayList<>(), new ArrayList<>(), Optional.empty(), new ArrayList<>());
            try {
                changes.of(frames, conventions).forEach(r -> find(r, conventions, found));
            } catch (RuntimeException e) {
                found.notes().add(UserMessages.of(e));
            }
            face.execute(() -> done.accept(found));
        });
    }

    /** Finds the frames of a draft again by other conventions. */
    void again(Draft draft, Conventions conventions, Consumer<Found> done) {
        List<FrameRequest> requests = Stream.concat(
                        draft.frames().stream().map(DatedFrame::request),
                        draft.unsettled().stream().map(u -> FrameRequest.of(u.file())))
                .toList();
        background.execute(() -> {
            Found found = new Found(new ArrayList<>(), new ArrayList<>(), Optional.empty(), new ArrayList<>());
            requests.forEach(r -> find(r, conventions, found));
            face.execute(() -> done.accept(found));
        });
    }

    private static Conventions conventions(Draft draft, NameClock clock) {
        return draft.recipe()
                .map(r -> r.frames().conventions())
                .orElse(Conventions.UNKNOWN.with(Conventions::clock, clock));
    }

    /** Takes out files whose content is that of another: a frame that counts twice would only seem less noisy. */
    private static void dropCopies(Found found, Draft draft) {
        List<DatedFrame> kept = new ArrayList<>(draft.frames());
        for (DatedFrame frame : List.copyOf(found.frames)) {
            Path file = frame.head().file();
            Optional<DatedFrame> same = kept.stream()
                    .filter(k -> !sameFile(k.head().file(), file))
                    .filter(k -> sameBytes(k.head().file(), file))
                    .findFirst();
            if (same.isPresent()) {
                found.frames.remove(frame);
                found.notes.add(Texts.of(
                        "frames.copy",
                        file.getFileName(),
                        same.get().head().file().getFileName()));
            } else {
                kept.add(frame);
            }
        }
    }

    private static boolean sameFile(Path a, Path b) {
        return a.toAbsolutePath().normalize().equals(b.toAbsolutePath().normalize());
    }

    private static boolean sameBytes(Path a, Path b) {
        try {
            return Files.size(a) == Files.size(b) && Files.mismatch(a, b) < 0;
        } catch (IOException e) {
            return false;
        }
    }

    private static Found opened(List<Path> files, Conventions conventions) {
        Found found = new Found(new ArrayList<>(), new ArrayList<>(), Optional.empty(), new ArrayList<>());
        try {
            Optional<Path> session = files.stream().filter(SessionFile::isName).findFirst();
            if (session.isPresent()) {
                SessionFile.Opened opened = SessionFile.read(session.get());
                return new Found(List.of(), List.of(), Optional.of(opened.session()), opened.notes());
            }
            for (FrameRequest request : requests(files)) {
                Optional<UnidentifiedFile> large = large(request.file());
                large.ifPresentOrElse(found.unsettled()::add, () -> find(request, conventions, found));
            }
        } catch (RuntimeException e) {
            found.notes().add(UserMessages.of(e));
        }
        return found;
    }

    /** A file so large that the user is asked first whether it is a frame. */
    private static Optional<UnidentifiedFile> large(Path file) {
        try {
            FrameHead head = FrameReader.head(file);
            double megapixels = 1e-6 * head.width() * head.height();
            return megapixels > MOST_MEGAPIXELS
                    ? Optional.of(new UnidentifiedFile(
                            file, Texts.of("panel.question.large", head.width(), head.height(), megapixels)))
                    : Optional.empty();
        } catch (FrameRefused e) {
            return Optional.empty();
        }
    }

    private static DatedFrame ofNamedPlanet(DatedFrame f) {
        return f.object().isPresent()
                ? f
                : new DatedFrame(
                        f.request(),
                        f.head(),
                        f.band(),
                        f.timing(),
                        PlanetName.of(f.head().file()),
                        f.encoding());
    }

    private static void find(FrameRequest request, Conventions conventions, Found found) {
        try {
            Frames.found(List.of(request), conventions).stream()
                    .map(FrameImporter::ofNamedPlanet)
                    .forEach(found.frames()::add);
        } catch (FramesRefused | FrameRefused e) {
            if (readable(request.file())) {
                found.unsettled().add(new UnidentifiedFile(request.file(), UserMessages.of(e, Wording.FRAME_PAGE)));
            } else {
                found.notes().add(UserMessages.of(e));
            }
        }
    }

    /** Whether a file is a frame, whatever else is unknown about it. */
    private static boolean readable(Path file) {
        try {
            return FrameReader.head(file).width() > 0;
        } catch (FrameRefused e) {
            return false;
        }
    }

    private static List<FrameRequest> requests(List<Path> files) {
        Map<Path, SheetRow> rows = new LinkedHashMap<>();
        List<Path> frames = new ArrayList<>();
        for (Path file : files) {
            if (Files.isDirectory(file)) {
                within(file).forEach(f -> {
                    if (named(f, ".csv")) {
                        take(f, rows);
                    } else {
                        frames.add(f);
                    }
                });
            } else if (named(file, ".csv")) {
                take(file, rows);
            } else {
                frames.add(file);
            }
        }
        List<FrameRequest> requests = new ArrayList<>();
        for (Path frame : frames) {
            SheetRow row = rows.remove(frame.toAbsolutePath().normalize());
            requests.add(row == null ? FrameRequest.of(frame) : FrameRequest.of(row));
        }
        rows.values().forEach(row -> requests.add(FrameRequest.of(row)));
        return requests;
    }

    private static void take(Path sheet, Map<Path, SheetRow> rows) {
        Sheet.read(sheet)
                .rows()
                .forEach(row -> rows.put(row.file().toAbsolutePath().normalize(), row));
    }

    private static List<Path> within(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(f -> named(f, ".csv") || FRAMES.stream().anyMatch(suffix -> named(f, suffix)))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new FrameRefused(folder, Message.of("file.notReadable"), e);
        }
    }

    private static boolean named(Path file, String suffix) {
        return file.toString().toLowerCase(Locale.ROOT).endsWith(suffix);
    }
}

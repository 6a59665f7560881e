package org.epochrome.session.verdict;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.epochrome.ephemeris.Site;
import org.epochrome.image.Encoding;
import org.epochrome.io.identify.SheetRow;
import org.epochrome.io.identify.Timing;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.session.recipe.ManualDisk;
import org.epochrome.session.recipe.Mirroring;
import org.epochrome.session.recipe.Mount;
import org.epochrome.session.recipe.Place;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.recipe.Setup;
import org.epochrome.text.Message;
import org.epochrome.time.RecordingSpan;

/** A change of a recipe that mends what is wrong with it. A pure value: whoever shows it applies it. */
public sealed interface Remedy {
    /** Where times come from that a remedy changed, for reports and session files. */
    String SOURCE = "corrected";

    /** The recipe with the change, whatever else was changed in it since. */
    Recipe appliedTo(Recipe recipe);

    /** What to do, one sentence. */
    Message words();

    /**
     * Recordings are moved in time.
     *
     * @param laterBy by how much each file's recording is later than stated; negative if it is earlier
     */
    record Times(Map<Path, Duration> laterBy) implements Remedy {
        public Times {
            laterBy = Map.copyOf(laterBy);
        }

        @Override
        public Recipe appliedTo(Recipe recipe) {
            return withFrames(
                    recipe,
                    f -> laterBy.containsKey(f.head().file())
                            ? moved(f, laterBy.get(f.head().file()))
                            : f);
        }

        private static DatedFrame moved(DatedFrame frame, Duration by) {
            RecordingSpan old = frame.timing().span();
            RecordingSpan span =
                    new RecordingSpan(old.start().plus(by), old.end().plus(by));
            Optional<SheetRow> row = frame.request().row();
            SheetRow corrected = new SheetRow(
                    frame.head().file(),
                    row.flatMap(SheetRow::band).or(() -> frame.request().band()),
                    Optional.of(span),
                    row.flatMap(SheetRow::mirrored),
                    row.flatMap(SheetRow::encoding),
                    SOURCE);
            return new DatedFrame(
                    new FrameRequest(frame.request().file(), frame.request().band(), Optional.of(corrected)),
                    frame.head(),
                    frame.band(),
                    new Timing(span, Message.of("source.given", SOURCE), List.of()),
                    frame.object(),
                    frame.encoding());
        }

        @Override
        public Message words() {
            return Message.of(
                    "remedy.times",
                    laterBy.keySet().stream()
                            .map(file -> file.getFileName().toString())
                            .sorted()
                            .collect(Collectors.joining(", ")));
        }
    }

    /** Frames are left out. */
    record Without(Set<Path> files) implements Remedy {
        public Without {
            files = Set.copyOf(files);
        }

        @Override
        public Recipe appliedTo(Recipe recipe) {
            Set<Path> out = new HashSet<>(recipe.frames().leftOut());
            out.addAll(files);
            return recipe.with(recipe.frames().leavingOut(out));
        }

        @Override
        public Message words() {
            return Message.of(
                    "remedy.without",
                    files.stream()
                            .map(file -> file.getFileName().toString())
                            .sorted()
                            .collect(Collectors.joining(", ")));
        }
    }

    /** North of the reference frame is another, degrees. */
    record North(double deg) implements Remedy {
        @Override
        public Recipe appliedTo(Recipe recipe) {
            return recipe.with(recipe.setup().with(Setup::northDeg, OptionalDouble.of(deg)));
        }

        @Override
        public Message words() {
            return Message.of("remedy.north", deg);
        }
    }

    /** The frames are mirrored, or are not. */
    record Mirrored(boolean mirrored) implements Remedy {
        @Override
        public Recipe appliedTo(Recipe recipe) {
            return recipe.with(recipe.setup().with(Setup::mirroring, mirrored ? Mirroring.YES : Mirroring.NO));
        }

        @Override
        public Message words() {
            return Message.of(mirrored ? "remedy.mirrored" : "remedy.notMirrored");
        }
    }

    /** The mount is of another kind. */
    record OtherMount(Mount mount) implements Remedy {
        @Override
        public Recipe appliedTo(Recipe recipe) {
            return recipe.with(recipe.setup().with(Setup::mount, mount));
        }

        @Override
        public Message words() {
            return Message.of(mount == Mount.ALTAZ ? "remedy.altaz" : "remedy.equatorial");
        }
    }

    /** The telescope stood elsewhere. */
    record OtherSite(Site site) implements Remedy {
        @Override
        public Recipe appliedTo(Recipe recipe) {
            return recipe.with(recipe.place().with(Place::site, Optional.of(site)));
        }

        @Override
        public Message words() {
            return Message.of("remedy.site", site.latitudeDeg(), site.longitudeDeg());
        }
    }

    /** A frame's disk keeps a north angle of its own. */
    record OwnNorth(Path file, ManualDisk disk) implements Remedy {
        @Override
        public Recipe appliedTo(Recipe recipe) {
            Map<Path, ManualDisk> disks = new HashMap<>(recipe.frames().disks());
            disks.put(file, disk);
            return recipe.with(recipe.frames().holding(disks));
        }

        @Override
        public Message words() {
            return Message.of(
                    "remedy.ownNorth",
                    file.getFileName(),
                    disk.northAngleDeg().orElse(Double.NaN),
                    disk.x(),
                    disk.y(),
                    disk.equatorialRadiusPx());
        }
    }

    /** The samples of all frames stand for light in another way. */
    record Encoded(Encoding encoding) implements Remedy {
        @Override
        public Recipe appliedTo(Recipe recipe) {
            return recipe.with(recipe.frames().with(encoding));
        }

        @Override
        public Message words() {
            return Message.of("remedy.encoding", encoding.word());
        }
    }

    private static Recipe withFrames(Recipe recipe, UnaryOperator<DatedFrame> change) {
        List<DatedFrame> changed = new ArrayList<>();
        recipe.frames().all().forEach(f -> changed.add(change.apply(f)));
        return recipe.with(recipe.frames().with(changed));
    }
}

package org.epochrome.desktop;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.stage.FileChooser;
import javafx.stage.Window;
import org.epochrome.desktop.style.Texts;
import org.epochrome.desktop.view.FileChoosers;

/** The system's own file choosers; they open where the last one ended. */
final class SystemChoosers implements FileChoosers {
    private final Window owner;
    private final Consumer<Path> shows;
    private File folder;

    /** @param shows opens a folder in the system's file manager */
    SystemChoosers(Window owner, Consumer<Path> shows) {
        this.owner = owner;
        this.shows = shows;
    }

    @Override
    public void startIn(Path beside) {
        if (folder == null && Files.isDirectory(beside)) {
            folder = beside.toFile();
        }
    }

    @Override
    public void reveal(Path file) {
        shows.accept(file.toAbsolutePath().getParent());
    }

    @Override
    public List<Path> open() {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(Texts.of("chooser.open"));
        chooser.setInitialDirectory(folder);
        chooser.getExtensionFilters()
                .addAll(
                        new FileChooser.ExtensionFilter(
                                Texts.of("chooser.frames"),
                                "*.fits",
                                "*.fit",
                                "*.fts",
                                "*.gz",
                                "*.fz",
                                "*.tif",
                                "*.tiff",
                                "*.png",
                                "*.csv",
                                "*.json",
                                "*.epochrome"),
                        new FileChooser.ExtensionFilter(Texts.of("chooser.all"), "*"));
        List<File> files = chooser.showOpenMultipleDialog(owner);
        if (files == null || files.isEmpty()) {
            return List.of();
        }
        folder = files.get(0).getParentFile();
        return files.stream().map(File::toPath).toList();
    }

    @Override
    public Optional<Path> save(String title, String name, List<String> suffixes) {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(title);
        chooser.setInitialDirectory(folder);
        chooser.setInitialFileName(name);
        for (String suffix : suffixes) {
            chooser.getExtensionFilters().add(new FileChooser.ExtensionFilter(suffix, "*" + suffix));
        }
        while (true) {
            File file = chooser.showSaveDialog(owner);
            if (file == null) {
                return Optional.empty();
            }
            folder = file.getParentFile();
            String lower = file.getName().toLowerCase(Locale.ROOT);
            if (suffixes.stream().anyMatch(lower::endsWith)) {
                return Optional.of(file.toPath());
            }
            String suffix = chosen(chooser).orElse(suffixes.get(0));
            Path ended = Path.of(file + suffix);
            if (!Files.exists(ended)) {
                return Optional.of(ended);
            }
            // The system asked about the name without its suffix, if at all; now it asks about the whole one.
            chooser.setInitialDirectory(folder);
            chooser.setInitialFileName(ended.getFileName().toString());
        }
    }

    private static Optional<String> chosen(FileChooser chooser) {
        return Optional.ofNullable(chooser.getSelectedExtensionFilter())
                .map(FileChooser.ExtensionFilter::getDescription);
    }
}

package org.epochrome.robustness;

import java.nio.file.FileStore;
import java.nio.file.FileSystem;
import java.nio.file.Path;
import java.nio.file.PathMatcher;
import java.nio.file.WatchService;
import java.nio.file.attribute.UserPrincipalLookupService;
import java.nio.file.spi.FileSystemProvider;
import java.util.Set;

/** The file system of {@link FaultyFiles}. */
final class FaultySystem extends FileSystem {
    private final FaultyFiles provider;
    private final FileSystem real;

    FaultySystem(FaultyFiles provider, FileSystem real) {
        this.provider = provider;
        this.real = real;
    }

    @Override
    public FileSystemProvider provider() {
        return provider;
    }

    @Override
    public void close() {
        // The other file system is closed by whoever made it.
    }

    @Override
    public boolean isOpen() {
        return real.isOpen();
    }

    @Override
    public boolean isReadOnly() {
        return real.isReadOnly();
    }

    @Override
    public String getSeparator() {
        return real.getSeparator();
    }

    @Override
    public Iterable<Path> getRootDirectories() {
        throw new UnsupportedOperationException();
    }

    @Override
    public Iterable<FileStore> getFileStores() {
        return real.getFileStores();
    }

    @Override
    public Set<String> supportedFileAttributeViews() {
        return real.supportedFileAttributeViews();
    }

    @Override
    public Path getPath(String first, String... more) {
        return provider.on(real.getPath(first, more));
    }

    @Override
    public PathMatcher getPathMatcher(String pattern) {
        throw new UnsupportedOperationException();
    }

    @Override
    public UserPrincipalLookupService getUserPrincipalLookupService() {
        return real.getUserPrincipalLookupService();
    }

    @Override
    public WatchService newWatchService() {
        throw new UnsupportedOperationException();
    }
}

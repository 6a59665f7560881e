package org.epochrome.robustness;

import java.io.IOException;
import java.lang.reflect.InvocationHandler;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.net.URI;
import java.nio.channels.FileChannel;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.AccessMode;
import java.nio.file.CopyOption;
import java.nio.file.DirectoryStream;
import java.nio.file.FileStore;
import java.nio.file.FileSystem;
import java.nio.file.LinkOption;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.FileAttributeView;
import java.nio.file.spi.FileSystemProvider;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The files of another file system on a disk that breaks: from a chosen call on, or at one, what would change something fails.
 * Reading goes on.
 */
final class FaultyFiles extends FileSystemProvider {
    private final FileSystemProvider real;
    private final FaultySystem system;
    private int calls;
    private int firstFailing = Integer.MAX_VALUE;
    private int lastFailing = Integer.MAX_VALUE;

    FaultyFiles(FileSystem real) {
        this.real = real.provider();
        system = new FaultySystem(this, real);
    }

    /** A path of the other file system, on this disk. */
    Path on(Path path) {
        return wrapped(path);
    }

    /** Lets calls fail: the next is number 1. */
    void failFrom(int call) {
        calls = 0;
        firstFailing = call;
        lastFailing = Integer.MAX_VALUE;
    }

    /** Lets one call fail. */
    void failOnce(int call) {
        failFrom(call);
        lastFailing = call;
    }

    /** How many calls would have changed something since {@link #failFrom}. */
    int calls() {
        return calls;
    }

    private void change() throws IOException {
        calls++;
        if (calls >= firstFailing && calls <= lastFailing) {
            throw new IOException("No space left on device");
        }
    }

    private Path wrapped(Path path) {
        return path == null
                ? null
                : (Path) Proxy.newProxyInstance(
                        FaultyFiles.class.getClassLoader(), new Class<?>[] {Path.class}, new Wrapping(path));
    }

    private static Path unwrapped(Path path) {
        return Proxy.isProxyClass(path.getClass()) ? ((Wrapping) Proxy.getInvocationHandler(path)).path : path;
    }

    /** A path that leads its callers to this file system. */
    private final class Wrapping implements InvocationHandler {
        private final Path path;

        Wrapping(Path path) {
            this.path = path;
        }

        @Override
        public Object invoke(Object proxy, Method method, Object[] args) throws Throwable {
            if (method.getName().equals("getFileSystem")) {
                return system;
            }
            Object[] plain = args == null
                    ? null
                    : Arrays.stream(args)
                            .map(a -> a instanceof Path p ? unwrapped(p) : a)
                            .toArray();
            try {
                Object result = method.invoke(path, plain);
                return result instanceof Path p ? wrapped(p) : result;
            } catch (InvocationTargetException e) {
                throw e.getCause();
            }
        }
    }

    @Override
    public FileChannel newFileChannel(Path path, Set<? extends OpenOption> options, FileAttribute<?>... attributes)
            throws IOException {
        change();
        return new FaultyChannel(real.newFileChannel(unwrapped(path), options, attributes), this::change);
    }

    @Override
    public SeekableByteChannel newByteChannel(
            Path path, Set<? extends OpenOption> options, FileAttribute<?>... attributes) throws IOException {
        boolean reads = options.stream().allMatch(o -> o.toString().equals("READ"));
        return reads
                ? real.newByteChannel(unwrapped(path), options, attributes)
                : newFileChannel(path, options, attributes);
    }

    @Override
    public DirectoryStream<Path> newDirectoryStream(Path folder, DirectoryStream.Filter<? super Path> filter)
            throws IOException {
        List<Path> all = new ArrayList<>();
        try (DirectoryStream<Path> stream = real.newDirectoryStream(unwrapped(folder), p -> true)) {
            for (Path path : stream) {
                if (filter.accept(wrapped(path))) {
                    all.add(wrapped(path));
                }
            }
        }
        return new DirectoryStream<>() {
            @Override
            public Iterator<Path> iterator() {
                return all.iterator();
            }

            @Override
            public void close() {
                // Nothing is open.
            }
        };
    }

    @Override
    public void createDirectory(Path folder, FileAttribute<?>... attributes) throws IOException {
        change();
        real.createDirectory(unwrapped(folder), attributes);
    }

    @Override
    public void delete(Path path) throws IOException {
        change();
        real.delete(unwrapped(path));
    }

    @Override
    public void copy(Path from, Path to, CopyOption... options) throws IOException {
        change();
        real.copy(unwrapped(from), unwrapped(to), options);
    }

    @Override
    public void move(Path from, Path to, CopyOption... options) throws IOException {
        change();
        real.move(unwrapped(from), unwrapped(to), options);
    }

    @Override
    public boolean isSameFile(Path a, Path b) throws IOException {
        return real.isSameFile(unwrapped(a), unwrapped(b));
    }

    @Override
    public boolean isHidden(Path path) throws IOException {
        return real.isHidden(unwrapped(path));
    }

    @Override
    public FileStore getFileStore(Path path) throws IOException {
        return real.getFileStore(unwrapped(path));
    }

    @Override
    public void checkAccess(Path path, AccessMode... modes) throws IOException {
        real.checkAccess(unwrapped(path), modes);
    }

    @Override
    public <V extends FileAttributeView> V getFileAttributeView(Path path, Class<V> type, LinkOption... options) {
        return real.getFileAttributeView(unwrapped(path), type, options);
    }

    @Override
    public <A extends BasicFileAttributes> A readAttributes(Path path, Class<A> type, LinkOption... options)
            throws IOException {
        return real.readAttributes(unwrapped(path), type, options);
    }

    @Override
    public Map<String, Object> readAttributes(Path path, String attributes, LinkOption... options) throws IOException {
        return real.readAttributes(unwrapped(path), attributes, options);
    }

    @Override
    public void setAttribute(Path path, String attribute, Object value, LinkOption... options) throws IOException {
        change();
        real.setAttribute(unwrapped(path), attribute, value, options);
    }

    @Override
    public String getScheme() {
        return "faulty";
    }

    @Override
    public FileSystem newFileSystem(URI uri, Map<String, ?> environment) {
        throw new UnsupportedOperationException();
    }

    @Override
    public FileSystem getFileSystem(URI uri) {
        return system;
    }

    @Override
    public Path getPath(URI uri) {
        throw new UnsupportedOperationException();
    }
}

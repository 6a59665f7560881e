import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import javax.imageio.ImageIO;

/**
 * Makes what can be made of target/epochrome.jar on the system it runs on, in target: the launcher and its archive of classes, the
 * application with its own Java in app, and a package to install (.deb, .msi or .dmg; without the tool that it takes, a note).
 *
 * <p>{@code java src/main/package/Package.java VERSION TIME}, from the project's folder; every file is as old as TIME.
 */
final class Package {
    private static final Path TARGET = Path.of("target").toAbsolutePath();
    private static final Path JAR = TARGET.resolve("epochrome.jar");
    private static final Path WORK = TARGET.resolve("package");
    private static final Path HERE = Path.of("src", "main", "package");
    private static final String JAVA_HOME = System.getProperty("java.home");
    private static final String SYSTEM = System.getProperty("os.name").toLowerCase(Locale.ROOT);
    private static final boolean WINDOWS = SYSTEM.contains("win") && !SYSTEM.contains("darwin");
    private static final boolean MAC = SYSTEM.contains("mac");
    /** Read by jdeps from the jar, and those that the window's library and image readers look up by name. */
    private static final String MODULES = "java.base,java.desktop,java.logging,java.xml,jdk.unsupported";
    /** Half of the memory suits frames of a full sensor on a small machine and leaves room for other programs. */
    private static final List<String> JAVA_OPTIONS = List.of("-XX:MaxRAMPercentage=50", "-XX:+UseSerialGC", "-Xshare:auto");
    private static final List<String> DEMO = List.of(
            "combine", "--quiet", "--body", "jupiter", "--site", "46.2,8.5,480", "--overwrite",
            "demo-data/jupiter/jupiter-R.fits", "demo-data/jupiter/jupiter-G.fits", "demo-data/jupiter/jupiter-B.fits");

    private final String version;
    private final Instant time;

    private Package(String version, Instant time) {
        this.version = version;
        this.time = time;
    }

    public static void main(String[] args) throws IOException, InterruptedException {
        System.setProperty("java.awt.headless", "true");
        new Package(args[0], Instant.parse(args[1])).make();
    }

    private void make() throws IOException, InterruptedException {
        delete(WORK);
        delete(TARGET.resolve("app"));
        Files.createDirectories(WORK);
        launcher(TARGET);
        archive(Path.of(JAVA_HOME, "bin", "java"), JAR, TARGET.resolve("epochrome.jsa"));
        Path runtime = WORK.resolve("runtime");
        run(tool("jlink"), "--add-modules", MODULES, "--strip-java-debug-attributes", "--no-header-files", "--no-man-pages",
                "--compress=2", "--output", runtime.toString());
        Path application = application(runtime);
        if (WINDOWS || MAC) {
            installer(application, WINDOWS ? "msi" : "dmg");
        } else {
            deb(application);
        }
        Path java = application.resolve(MAC ? "Contents/runtime/Contents/Home" : WINDOWS ? "runtime" : "lib/runtime")
                .resolve("bin").resolve(WINDOWS ? "java.exe" : "java");
        Path app = application.resolve(MAC ? "Contents/app" : WINDOWS ? "app" : "lib/app");
        run(java.toString(), "-Xshare:dump", "-Xlog:cds=off", "-Xlog:cds+hashtables=off");
        archive(java, app.resolve("epochrome.jar"), app.resolve("epochrome.jsa"));
    }

    /** By jpackage, in target/app. */
    private Path application(Path runtime) throws IOException, InterruptedException {
        Path input = Files.createDirectories(WORK.resolve("input"));
        Files.copy(JAR, input.resolve("epochrome.jar"), StandardCopyOption.COPY_ATTRIBUTES);
        if (!WINDOWS && !MAC) {
            launcher(input);
        }
        List<String> words = new ArrayList<>(List.of(tool("jpackage"), "--type", "app-image", "--name", "epochrome",
                "--app-version", version, "--description", "Combines stacked images of planets", "--vendor", "Epochrome",
                "--input", input.toString(), "--main-jar", "epochrome.jar", "--runtime-image", runtime.toString(),
                "--icon", icon().toString(), "--dest", TARGET.resolve("app").toString(),
                "--java-options", "-XX:SharedArchiveFile=$APPDIR/epochrome.jsa"));
        JAVA_OPTIONS.forEach(option -> words.addAll(List.of("--java-options", option)));
        if (WINDOWS) {
            Path console = WORK.resolve("console.properties");
            Files.writeString(console, "win-console=true\n");
            words.addAll(List.of("--add-launcher", "epochrome-command=" + console));
        }
        run(words.toArray(new String[0]));
        return TARGET.resolve("app").resolve(MAC ? "epochrome.app" : "epochrome");
    }

    /** On Windows and macOS, by jpackage; the file association is in session.properties. */
    private void installer(Path application, String type) throws IOException, InterruptedException {
        List<String> words = new ArrayList<>(List.of(tool("jpackage"), "--type", type, "--name", "epochrome", "--app-version",
                version, "--app-image", application.toString(), "--license-file", "LICENSE", "--file-associations",
                HERE.resolve("session.properties").toString(), "--dest", TARGET.toString()));
        if (WINDOWS) {
            words.addAll(List.of("--win-menu", "--win-shortcut-prompt", "--win-per-user-install", "--win-upgrade-uuid",
                    "6d0a3f0e-53a6-4c0f-8c5e-0b7b6ad4f5c1"));
        }
        run(words.toArray(new String[0]));
    }

    /** A package for Debian and its relatives. How xz splits its work would depend on the machine, and it saves little here. */
    private void deb(Path application) throws IOException, InterruptedException {
        if (!onPath("dpkg-deb")) {
            System.out.println("No dpkg-deb here: no .deb was made.");
            return;
        }
        Path root = WORK.resolve("deb");
        copy(application, root.resolve("opt/epochrome"));
        // It names the time at which jpackage ran.
        Files.deleteIfExists(root.resolve("opt/epochrome/lib/app/.jpackage.xml"));
        place("epochrome.desktop", root.resolve("usr/share/applications/epochrome.desktop"));
        place("epochrome.xml", root.resolve("usr/share/mime/packages/epochrome.xml"));
        Path icon = Files.createDirectories(root.resolve("usr/share/icons/hicolor/256x256/apps")).resolve("epochrome.png");
        Files.copy(icon(), icon);
        Path documents = Files.createDirectories(root.resolve("usr/share/doc/epochrome"));
        Files.copy(Path.of("LICENSE"), documents.resolve("copyright"));
        Files.createDirectories(root.resolve("usr/bin"));
        Files.createSymbolicLink(root.resolve("usr/bin/epochrome"), Path.of("/opt/epochrome/lib/app/epochrome"));
        String architecture = output("dpkg", "--print-architecture").strip();
        Path control = Files.createDirectories(root.resolve("DEBIAN"));
        Files.writeString(control.resolve("control"), Files.readString(HERE.resolve("deb/control"))
                .replace("@VERSION@", version)
                .replace("@ARCHITECTURE@", architecture)
                .replace("@SIZE@", String.valueOf(kilobytes(root))));
        for (String script : List.of("postinst", "prerm")) {
            place("deb/" + script, control.resolve(script));
        }
        settle(root);
        Path deb = TARGET.resolve("epochrome_" + version + "_" + architecture + ".deb");
        run(Map.of("SOURCE_DATE_EPOCH", String.valueOf(time.getEpochSecond())),
                "dpkg-deb", "--root-owner-group", "-Zgzip", "--build", root.toString(), deb.toString());
    }

    /** The classes that a session loads, as Java maps them into memory at the start. */
    private static void archive(Path java, Path jar, Path archive) throws IOException, InterruptedException {
        List<String> words = new ArrayList<>(List.of(java.toString(), "-XX:ArchiveClassesAtExit=" + archive, "-XX:+UseSerialGC",
                "-Xlog:cds=off", "-Xlog:cds+dynamic=off", "-cp", jar.toString(), "org.epochrome.desktop.Launcher"));
        words.addAll(DEMO);
        for (String product : List.of("png", "fits", "json")) {
            words.add(product.equals("json") ? "--report" : "--out");
            words.add(TARGET.resolve("demo").resolve("archived." + product).toString());
        }
        run(words.toArray(new String[0]));
    }

    private static void launcher(Path folder) throws IOException {
        Path launcher = folder.resolve("epochrome");
        Files.copy(Path.of("src", "main", "launcher", "epochrome"), launcher, StandardCopyOption.REPLACE_EXISTING);
        launcher.toFile().setExecutable(true);
    }

    private static Path icon() throws IOException {
        Path icon = WORK.resolve("epochrome" + (MAC ? ".icns" : WINDOWS ? ".ico" : ".png"));
        byte[] png = png(256);
        Files.write(icon, MAC ? icns(png) : WINDOWS ? ico(png) : png);
        return icon;
    }

    /** The sign of the window's AppIcon: one disk in three colours that nearly cover each other. */
    private static byte[] png(int px) throws IOException {
        BufferedImage image = new BufferedImage(px, px, BufferedImage.TYPE_INT_ARGB);
        float[] full = {1, 0.95f, 0.86f};
        for (int y = 0; y < px; y++) {
            for (int x = 0; x < px; x++) {
                float[] part = new float[3];
                float covered = 0;
                for (int c = 0; c < 3; c++) {
                    double dx = x + 0.5 - (0.5 + (c - 1) * 0.07) * px;
                    double dy = y + 0.5 - 0.5 * px;
                    part[c] = (float) Math.max(0, Math.min(1, 0.37 * px - Math.hypot(dx, dy) + 0.5));
                    covered = Math.max(covered, part[c]);
                }
                if (covered > 0) {
                    image.setRGB(x, y, new Color(full[0] * part[0] / covered, full[1] * part[1] / covered,
                            full[2] * part[2] / covered, covered).getRGB());
                }
            }
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(image, "png", out);
        return out.toByteArray();
    }

    /** An icon file of Windows with one PNG of 256 pixels, whose width is written as 0. */
    private static byte[] ico(byte[] png) {
        return ByteBuffer.allocate(22 + png.length).order(ByteOrder.LITTLE_ENDIAN)
                .putShort((short) 0).putShort((short) 1).putShort((short) 1)
                .putInt(0).putShort((short) 1).putShort((short) 32).putInt(png.length).putInt(22)
                .put(png).array();
    }

    /** An icon file of macOS with one PNG of 256 pixels. */
    private static byte[] icns(byte[] png) {
        return ByteBuffer.allocate(16 + png.length)
                .put("icns".getBytes(StandardCharsets.US_ASCII)).putInt(16 + png.length)
                .put("ic08".getBytes(StandardCharsets.US_ASCII)).putInt(8 + png.length)
                .put(png).array();
    }

    /** Times and permissions that do not depend on who builds and when. */
    private void settle(Path root) throws IOException {
        for (Path path : sorted(root)) {
            if (!Files.isSymbolicLink(path)) {
                boolean executable = Files.isDirectory(path) || Files.isExecutable(path);
                Files.setPosixFilePermissions(path, PosixFilePermissions.fromString(executable ? "rwxr-xr-x" : "rw-r--r--"));
                Files.setLastModifiedTime(path, FileTime.from(time));
            }
        }
    }

    private static long kilobytes(Path root) throws IOException {
        long bytes = 0;
        for (Path path : sorted(root)) {
            bytes += Files.isRegularFile(path) ? Files.size(path) : 0;
        }
        return (bytes + 1023) / 1024;
    }

    private static void place(String name, Path to) throws IOException {
        Files.createDirectories(to.getParent());
        Files.copy(HERE.resolve(name), to, StandardCopyOption.COPY_ATTRIBUTES);
    }

    private static void copy(Path from, Path to) throws IOException {
        for (Path path : sorted(from)) {
            Path copied = to.resolve(from.relativize(path).toString());
            Files.createDirectories(copied.getParent());
            Files.copy(path, copied, StandardCopyOption.COPY_ATTRIBUTES);
        }
    }

    private static void delete(Path root) throws IOException {
        if (Files.exists(root)) {
            for (Path path : sorted(root).stream().sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        }
    }

    private static List<Path> sorted(Path root) throws IOException {
        try (Stream<Path> walked = Files.walk(root)) {
            return walked.sorted().toList();
        }
    }

    private static String tool(String name) {
        return Path.of(JAVA_HOME, "bin", name).toString();
    }

    private static boolean onPath(String program) {
        return Stream.of(System.getenv("PATH").split(File.pathSeparator))
                .anyMatch(folder -> Files.isExecutable(Path.of(folder, program)));
    }

    private static void run(String... words) throws IOException, InterruptedException {
        run(Map.of(), words);
    }

    private static void run(Map<String, String> variables, String... words) throws IOException, InterruptedException {
        ProcessBuilder program = new ProcessBuilder(words).redirectErrorStream(true);
        program.environment().putAll(variables);
        Path log = WORK.resolve("log.txt");
        int code = program.redirectOutput(log.toFile()).start().waitFor();
        if (code != 0) {
            PrintStream out = System.out;
            out.println(String.join(" ", words));
            out.println(Files.readString(log));
            throw new IOException(words[0] + " ended with " + code);
        }
    }

    private static String output(String... words) throws IOException {
        return new String(new ProcessBuilder(words).start().getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }
}

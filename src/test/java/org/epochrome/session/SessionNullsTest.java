package org.epochrome.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.epochrome.image.Plane;
import org.epochrome.io.FrameRefused;
import org.epochrome.io.FrameWriter;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A key that is null is as usual or lacking; a list has a value in each place. */
class SessionNullsTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private static final String EVERYTHING = """
            {"format": "epochrome-session", "version": 1, "body": "Saturn", "epoch": "2022-10-26T04:00:00Z",
             "site": {"latitudeDeg": 1, "longitudeDeg": 2, "heightM": 3},
             "air": {"pressureHpa": 970, "temperatureC": 3, "relativeHumidity": 0.3},
             "setup": {"northDeg": 1, "mirrored": "no", "scaleArcsecPerPx": 0.1, "mount": "altaz"},
             "corrections": {"rotationSystem": "I", "rotationPeriodDays": 0.4, "turn": true, "dispersion": true,
              "airFlattening": true, "unsmear": true, "moons": true, "light": "sun",
              "response": [[400, 0.5], [900, 0.25]]},
             "alignment": {"witnesses": ["limb"], "shiftsPx": {"R": [0.1, 0.2]}, "freeScale": false},
             "assignment": {"red": "R", "green": "R", "blue": "R", "luminance": "R"},
             "clock": {"meaning": "end", "exposure": "PT2M", "utcOffset": "+02:00"},
             "passbandsNm": {"H": [654, 658]}, "encoding": "srgb",
             "frames": [{"file": "R.fits", "band": "R", "start": "2022-10-26T04:00:00Z", "end": "2022-10-26T04:01:00Z",
              "source": "sheet", "mirrored": false, "encoding": "linear", "leftOut": false,
              "disk": {"x": 8, "y": 8, "equatorialRadiusPx": 5, "northAngleDeg": 0}, "bytes": 2880, "sha256": "ab"}],
             "look": {"white": {"balance": "solar", "gains": [1, 1, 1]},
              "detail": {"deblur": 0.4, "iterations": 12, "smoothing": 0.006, "gain": 0.7, "peakPx": 5.5, "octaves": 1.5,
               "threshold": 2.5, "of": "bands"},
              "tone": {"brightness": 0.7, "black": 0.02, "contrast": 1.2, "saturation": 1.3},
              "framing": {"orientation": "south-up", "margin": 0.1, "enlarge": 1, "canvas": [64, 48], "caption": true}},
             "outputs": {"pictures": ["a.png"], "tiffBits": 16, "reports": ["a.json"],
              "map": {"file": "m.png", "widthPx": 360},
              "turning": {"file": "t.gif", "from": "2022-10-26T03:00:00Z", "until": "2022-10-26T05:00:00Z",
               "pictures": 9}}}
            """;

    @TempDir
    private Path folder;

    private Path file;

    @BeforeEach
    void frame() {
        FrameWriter.write(folder.resolve("R.fits"), new Plane(18, 17), List.of(), false);
        file = folder.resolve("s.json");
    }

    /** What a change makes of the session: a session or a refusal. */
    private boolean opens(JsonNode root) throws IOException {
        Files.writeString(file, root.toString());
        try {
            SessionFile.read(file);
            return true;
        } catch (FrameRefused | FramesRefused e) {
            assertEquals(1, e.getMessage().lines().count(), e.getMessage());
            assertTrue(e.getMessage().endsWith("."), e.getMessage());
            return false;
        }
    }

    @Test
    void everyKeyMayBeNullOrIsAskedFor() throws IOException {
        JsonNode root = MAPPER.readTree(EVERYTHING);
        assertTrue(opens(root));
        List<String> needed = new ArrayList<>();
        nullEachKey(root, root, "", needed);
        assertEquals(
                List.of(
                        "/format",
                        "/version",
                        "/body",
                        "/site/latitudeDeg",
                        "/site/longitudeDeg",
                        "/air/pressureHpa",
                        "/air/temperatureC",
                        "/air/relativeHumidity",
                        "/alignment/shiftsPx/R",
                        "/passbandsNm/H",
                        "/frames",
                        "/frames/0/file",
                        "/frames/0/start",
                        "/frames/0/end",
                        "/frames/0/disk/x",
                        "/frames/0/disk/y",
                        "/frames/0/disk/equatorialRadiusPx",
                        "/look/white/balance",
                        "/look/white/gains",
                        "/outputs/map/file",
                        "/outputs/turning/file"),
                needed);
    }

    private void nullEachKey(JsonNode root, JsonNode at, String where, List<String> needed) throws IOException {
        if (at instanceof ObjectNode object) {
            List<String> keys = new ArrayList<>();
            object.fieldNames().forEachRemaining(keys::add);
            for (String key : keys) {
                JsonNode was = object.get(key);
                object.putNull(key);
                if (!opens(root)) {
                    needed.add(where + "/" + key);
                }
                object.set(key, was);
                nullEachKey(root, was, where + "/" + key, needed);
            }
        } else if (at instanceof ArrayNode array) {
            for (int i = 0; i < array.size(); i++) {
                nullEachKey(root, array.get(i), where + "/" + i, needed);
            }
        }
    }

    @Test
    void noListHasAHole() throws IOException {
        JsonNode root = MAPPER.readTree(EVERYTHING);
        List<String> lists = new ArrayList<>();
        fillHoles(root, root, "", lists);
        assertEquals(
                List.of(
                        "corrections.response",
                        "corrections.response[0]",
                        "corrections.response[1]",
                        "alignment.witnesses",
                        "alignment.shiftsPx.R",
                        "passbandsNm.H",
                        "frames",
                        "look.white.gains",
                        "look.framing.canvas",
                        "outputs.pictures",
                        "outputs.reports"),
                lists);
    }

    private void fillHoles(JsonNode root, JsonNode at, String where, List<String> lists) throws IOException {
        if (at instanceof ArrayNode array) {
            lists.add(where);
            JsonNode last = array.remove(array.size() - 1);
            array.addNull();
            Files.writeString(file, root.toString());
            FrameRefused refused = assertThrows(FrameRefused.class, () -> SessionFile.read(file), where);
            String place = where + "[" + (array.size() - 1) + "] is null";
            assertTrue(refused.getMessage().contains(place), refused.getMessage());
            array.set(array.size() - 1, last);
            for (int i = 0; i < array.size(); i++) {
                fillHoles(root, array.get(i), where + "[" + i + "]", lists);
            }
        } else if (at instanceof ObjectNode object) {
            for (var entry : object.properties()) {
                fillHoles(
                        root, entry.getValue(), where.isEmpty() ? entry.getKey() : where + "." + entry.getKey(), lists);
            }
        }
    }
}

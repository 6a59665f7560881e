package org.epochrome.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeType;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.epochrome.image.Plane;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.write.FrameWriter;
import org.epochrome.session.recipe.FramesRefused;
import org.epochrome.session.sessionfile.SessionFile;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

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

    /** Why the session is refused, if it is. */
    private Optional<String> refusal(JsonNode root) throws IOException {
        Files.writeString(file, root.toString());
        try {
            SessionFile.read(file);
            return Optional.empty();
        } catch (FrameRefused | FramesRefused e) {
            assertEquals(1, e.getMessage().lines().count(), e.getMessage());
            assertTrue(e.getMessage().endsWith("."), e.getMessage());
            return Optional.of(e.getMessage());
        }
    }

    /** Places by what holds them, how many there are, what a refusal says of one, and those that may not be null. */
    static Stream<Arguments> places() {
        return Stream.of(
                arguments(
                        JsonNodeType.OBJECT,
                        96,
                        "",
                        List.of(
                                "format",
                                "version",
                                "body",
                                "site.latitudeDeg",
                                "site.longitudeDeg",
                                "air.pressureHpa",
                                "air.temperatureC",
                                "air.relativeHumidity",
                                "alignment.shiftsPx.R",
                                "passbandsNm.H",
                                "frames",
                                "frames[0].file",
                                "frames[0].start",
                                "frames[0].end",
                                "frames[0].disk.x",
                                "frames[0].disk.y",
                                "frames[0].disk.equatorialRadiusPx",
                                "look.white.balance",
                                "look.white.gains",
                                "outputs.map.file",
                                "outputs.turning.file")),
                arguments(
                        JsonNodeType.ARRAY,
                        19,
                        "%s is null",
                        List.of(
                                "corrections.response[0]",
                                "corrections.response[0][0]",
                                "corrections.response[0][1]",
                                "corrections.response[1]",
                                "corrections.response[1][0]",
                                "corrections.response[1][1]",
                                "alignment.witnesses[0]",
                                "alignment.shiftsPx.R[0]",
                                "alignment.shiftsPx.R[1]",
                                "passbandsNm.H[0]",
                                "passbandsNm.H[1]",
                                "frames[0]",
                                "look.white.gains[0]",
                                "look.white.gains[1]",
                                "look.white.gains[2]",
                                "look.framing.canvas[0]",
                                "look.framing.canvas[1]",
                                "outputs.pictures[0]",
                                "outputs.reports[0]")));
    }

    @ParameterizedTest
    @MethodSource("places")
    void nullIsAsUsualOrRefused(JsonNodeType holder, int places, String sentence, List<String> needed)
            throws IOException {
        JsonNode root = MAPPER.readTree(EVERYTHING);
        assertEquals(Optional.empty(), refusal(root));
        List<JsonPointer> tried = below(root, JsonPointer.empty())
                .filter(p -> root.at(p.head()).getNodeType() == holder)
                .toList();
        assertEquals(places, tried.size());
        List<String> refused = new ArrayList<>();
        for (JsonPointer at : tried) {
            String place =
                    at.toString().substring(1).replaceAll("/(\\d+)", "[$1]").replace('/', '.');
            refusal(withNull(root, at)).ifPresent(message -> {
                assertTrue(message.contains(sentence.formatted(place)), message);
                refused.add(place);
            });
        }
        assertEquals(needed, refused);
    }

    /** All places below one, each before those that it holds. */
    private static Stream<JsonPointer> below(JsonNode root, JsonPointer where) {
        JsonNode at = root.at(where);
        Stream<JsonPointer> next = at.isObject()
                ? at.properties().stream().map(entry -> where.appendProperty(entry.getKey()))
                : IntStream.range(0, at.size()).mapToObj(where::appendIndex);
        return next.flatMap(p -> Stream.concat(Stream.of(p), below(root, p)));
    }

    private static JsonNode withNull(JsonNode root, JsonPointer place) {
        JsonNode changed = root.deepCopy();
        JsonNode holder = changed.at(place.head());
        if (holder instanceof ArrayNode array) {
            array.setNull(place.last().getMatchingIndex());
        } else {
            ((ObjectNode) holder).putNull(place.last().getMatchingProperty());
        }
        return changed;
    }
}

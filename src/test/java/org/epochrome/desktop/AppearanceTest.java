package org.epochrome.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.BackgroundFill;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.scene.paint.Paint;
import org.epochrome.desktop.state.Topic;
import org.epochrome.desktop.style.Theme;
import org.epochrome.desktop.view.Probe;
import org.epochrome.ephemeris.Site;
import org.epochrome.session.recipe.Place;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;

/** Every page in every theme: words stand out, and readers of the screen have a name for every control. */
@Tag("session")
@Tag("thorough")
class AppearanceTest {
    /** For text of normal size: Web Content Accessibility Guidelines 2.1, success criterion 1.4.3 (W3C 2018). */
    private static final double LEAST_CONTRAST = 4.5;

    private static final int COARSER = 4;

    @TempDir
    private Path folder;

    private final FxRobot robot = new FxRobot();
    private Rig rig;

    @BeforeEach
    void open() throws Exception {
        FxToolkit.registerPrimaryStage();
        FxToolkit.setupStage(stage -> {
            rig = new Rig(folder, stage);
            rig.preferences().setAsked();
            stage.show();
        });
        rig.demoFrames(folder.resolve("frames"), COARSER);
        robot.interact(() -> rig.bench().take(List.of(folder.resolve("frames")), Place.at(new Site(46.2, 8.5, 480))));
        WaitForAsyncUtils.waitFor(300, TimeUnit.SECONDS, () -> WaitForAsyncUtils.asyncFx(
                        () -> rig.bench().combination().isPresent()
                                && !rig.bench().renderer().work().busyProperty().get())
                .get());
    }

    @AfterEach
    void close() throws Exception {
        FxToolkit.cleanupStages();
        rig.end();
    }

    private void onEveryPage(Consumer<String> check) {
        for (Topic topic : Topic.values()) {
            robot.interact(() -> rig.bench().select(topic));
            WaitForAsyncUtils.waitForFxEvents();
            robot.interact(() -> check.accept(topic.name()));
        }
        for (String key : List.of("preferences", "open-help", "keys")) {
            robot.interact(() -> rig.press("#" + key));
            WaitForAsyncUtils.waitForFxEvents();
            robot.interact(() -> check.accept(key));
            robot.interact(() -> Probe.escape(rig.workbench()));
        }
    }

    /** Nodes that are seen, none below one that is hidden. */
    private static void visit(Node node, Consumer<Node> visitor) {
        if (!node.isVisible() || node.isDisabled() || node.getOpacity() == 0) {
            return;
        }
        visitor.accept(node);
        if (node instanceof Parent parent) {
            parent.getChildrenUnmodifiable().forEach(child -> visit(child, visitor));
        }
    }

    @Test
    void wordsStandOutInEveryTheme() {
        Set<String> faint = new TreeSet<>();
        int[] counted = new int[1];
        for (Theme theme : Theme.values()) {
            robot.interact(() -> Probe.theme(rig.workbench(), theme.name()));
            WaitForAsyncUtils.waitForFxEvents();
            onEveryPage(page -> visit(rig.workbench(), node -> {
                if (node instanceof Labeled labeled && hasText(labeled)) {
                    counted[0]++;
                    double contrast = contrast(colour(labeled.getTextFill()), background(node));
                    if (contrast < LEAST_CONTRAST) {
                        faint.add(String.format(
                                "%s %s: %s %.2f",
                                theme,
                                page,
                                labeled.getText().lines().findFirst().orElse(""),
                                contrast));
                    }
                }
            }));
        }
        assertTrue(counted[0] > 600, "only " + counted[0]);
        assertEquals(Set.of(), faint);
    }

    private static boolean hasText(Labeled node) {
        return node.getText() != null && !node.getText().isBlank();
    }

    private static Color colour(Paint paint) {
        return (Color) paint;
    }

    /** What is painted below a node: the first opaque fill of it or of what it lies in. */
    private static Color background(Node node) {
        for (Node at = node; at != null; at = at.getParent()) {
            if (at instanceof Region region && region.getBackground() != null) {
                List<BackgroundFill> fills = region.getBackground().getFills();
                for (int i = fills.size() - 1; i >= 0; i--) {
                    if (fills.get(i).getFill() instanceof Color fill && fill.getOpacity() > 0.95) {
                        return fill;
                    }
                }
            }
        }
        return Color.BLACK;
    }

    private static double contrast(Color a, Color b) {
        double light = Math.max(luminance(a), luminance(b));
        double dark = Math.min(luminance(a), luminance(b));
        return (light + 0.05) / (dark + 0.05);
    }

    private static double luminance(Color c) {
        return 0.2126 * linear(c.getRed()) + 0.7152 * linear(c.getGreen()) + 0.0722 * linear(c.getBlue());
    }

    private static double linear(double part) {
        return part <= 0.04045 ? part / 12.92 : Math.pow((part + 0.055) / 1.055, 2.4);
    }

    @Test
    void everyControlHasAName() {
        List<String> nameless = new ArrayList<>();
        int[] counted = new int[1];
        onEveryPage(page -> {
            Set<Node> labelled = new java.util.HashSet<>();
            visit(rig.workbench(), node -> {
                if (node instanceof Label label && label.getLabelFor() != null) {
                    labelled.add(label.getLabelFor());
                }
            });
            visit(rig.workbench(), node -> {
                boolean own = node instanceof Control && !(node instanceof ScrollPane) && node.isFocusTraversable();
                if (own && node.getId() != null) {
                    counted[0]++;
                    boolean named = labelled.contains(node)
                            || (node.getAccessibleText() != null
                                    && !node.getAccessibleText().isBlank())
                            || (node instanceof Labeled words && hasText(words));
                    if (!named) {
                        nameless.add(page + " #" + node.getId());
                    }
                }
            });
        });
        assertTrue(counted[0] > 150, "only " + counted[0]);
        assertEquals(List.of(), nameless);
    }
}

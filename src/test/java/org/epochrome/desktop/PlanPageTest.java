package org.epochrome.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.DatePicker;
import javafx.scene.control.Labeled;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import org.epochrome.desktop.state.PlanInputs;
import org.epochrome.desktop.state.PlannedNight;
import org.epochrome.ephemeris.Body;
import org.epochrome.session.product.Session;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;

/** Plans a night in the window, as a user does. The site is invented. */
class PlanPageTest {
    private static final LocalDate NIGHT = LocalDate.of(2026, 12, 5);

    @TempDir
    private Path folder;

    private final FxRobot robot = new FxRobot();
    private Rig rig;

    @BeforeEach
    void open() throws Exception {
        FxToolkit.registerPrimaryStage();
        FxToolkit.setupStage(stage -> {
            rig = new Rig(folder, stage);
            stage.show();
        });
        robot.interact(() -> rig.workbench().lookup("#plan-night").fireEvent(new javafx.event.ActionEvent()));
    }

    @AfterEach
    void close() throws Exception {
        FxToolkit.cleanupStages();
        rig.end();
    }

    @Test
    void namesTheFieldThatIsMissing() {
        assertTrue(text("#plan-wrong").startsWith("Latitude"), text("#plan-wrong"));
        assertTrue(node("#plan-use").isDisabled());
        type("latitude", "46 12 N");
        type("longitude", "8.5");
        type("aperture", "wide");
        assertTrue(text("#plan-wrong").startsWith("Aperture"), text("#plan-wrong"));
    }

    @Test
    void plansAtOnceAndRemembers() throws Exception {
        plan();
        assertFalse(node("#plan-use").isDisabled());
        PlanInputs kept = rig.preferences().plan();
        assertEquals("46 12 N", kept.latitude());

        type("seeing", "0.5");
        await(() -> rig.preferences().plan().seeing().equals("0.5"));
    }

    @Test
    void keepsTelescopesBySaving() throws Exception {
        plan();
        type("keep-optics-name", "long one");
        robot.interact(() -> node("#plan-keep-optics").fireEvent(new javafx.event.ActionEvent()));
        type("aperture", "100");
        robot.interact(() -> {
            ComboBox<?> kept = (ComboBox<?>) node("#plan-optics");
            assertEquals(1, kept.getItems().size());
            kept.getSelectionModel().select(0);
        });
        assertEquals("200", ((TextInputControl) node("#plan-aperture")).getText());
    }

    @Test
    void savesThePlan() throws Exception {
        plan();
        Path page = folder.resolve("plan.html");
        rig.answer(page);
        robot.interact(() -> node("#plan-save").fireEvent(new javafx.event.ActionEvent()));
        await(() -> Files.exists(page));
        assertTrue(Files.readString(page).contains("<svg"));
    }

    /** A recording of the planned night that is longer than planned is compared with the plan; one of another planet is not. */
    @Test
    void givesItsLengthsToSessionsOfThatNight() throws Exception {
        plan();
        robot.interact(() -> node("#plan-use").fireEvent(new javafx.event.ActionEvent()));
        PlannedNight planned = rig.preferences().beginning().planned().orElseThrow();
        assertEquals(Body.JUPITER, planned.body());
        assertEquals(java.util.Set.of("R", "G", "B"), planned.lengths().keySet());
        planned.lengths().values().forEach(l -> assertTrue(l.compareTo(Duration.ofSeconds(20)) > 0, l.toString()));
        assertEquals(Map.of(), planned.lengthsFor(Body.MARS, java.util.List.of()));
    }

    @Test
    void closesByKey() throws Exception {
        plan();
        robot.push(KeyCode.ESCAPE);
        assertFalse(node("#plan").isVisible());
        assertTrue(rig.bench().draft().session().map(Session::recipe).isEmpty());
    }

    private void plan() throws Exception {
        robot.interact(() -> ((DatePicker) node("#plan-date")).setValue(NIGHT));
        type("latitude", "46 12 N");
        type("longitude", "8.5");
        await(() ->
                text(".plan-title").contains("Jupiter") && text(".plan-title").contains("2026-12-05"));
    }

    private void type(String field, String text) {
        robot.interact(() -> ((TextInputControl) node("#plan-" + field)).setText(text));
    }

    private Node node(String query) {
        return rig.workbench().lookup(query);
    }

    private String text(String query) {
        return ((Labeled) node(query)).getText();
    }

    private static void await(Callable<Boolean> done) throws Exception {
        WaitForAsyncUtils.waitFor(60, TimeUnit.SECONDS, done);
    }
}

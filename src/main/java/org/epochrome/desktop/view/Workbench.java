package org.epochrome.desktop.view;

import java.io.File;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import javafx.application.Application;
import javafx.application.ConditionalFeature;
import javafx.application.Platform;
import javafx.scene.control.Button;
import javafx.scene.input.DragEvent;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.TransferMode;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.epochrome.desktop.control.PlanUse;
import org.epochrome.desktop.control.Preferences;
import org.epochrome.desktop.control.SessionController;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.frames.FramePanel;
import org.epochrome.desktop.help.HelpPage;
import org.epochrome.desktop.look.ColourPanel;
import org.epochrome.desktop.look.DetailPanel;
import org.epochrome.desktop.look.FramingPanel;
import org.epochrome.desktop.look.PixelPicker;
import org.epochrome.desktop.panel.DiskPanel;
import org.epochrome.desktop.panel.EvidencePanel;
import org.epochrome.desktop.panel.KeyList;
import org.epochrome.desktop.panel.Panel;
import org.epochrome.desktop.panel.SessionPanel;
import org.epochrome.desktop.panel.ShiftPanel;
import org.epochrome.desktop.panel.StartPage;
import org.epochrome.desktop.picture.TimeRibbon;
import org.epochrome.desktop.plan.PlanPage;
import org.epochrome.desktop.products.ProductsPage;
import org.epochrome.desktop.setup.SetupPage;
import org.epochrome.desktop.state.Topic;
import org.epochrome.desktop.style.Texts;
import org.epochrome.desktop.style.Theme;
import org.epochrome.desktop.verdict.VerdictLine;

/** The window's content: the planet in the middle, the time ribbon below, the side beside, the tools above. */
public final class Workbench extends BorderPane {
    private final Workspace bench;
    private final SessionController controller;
    private final Preferences preferences;
    private final Actions actions;
    private final Viewer viewer;
    private final Toolbar tools;
    private final SidePanel side;
    private final TimeRibbon ribbon;
    private final ShiftPanel shift;
    private final DetailPanel detail;
    private final ColourPanel colour;
    private final MessageBars bars;
    private final SetupPage setup;
    private final ProductsPage products;
    private final HelpPage help = new HelpPage(this::hideHelp);
    private final PlanPage plan;
    private final KeyList keys = new KeyList();
    /** A frame around all while files are held over the window. */
    private final Region taking = new Region();

    public Workbench(Workspace bench, SessionController controller, Preferences preferences, FileChoosers choosers) {
        this.bench = bench;
        this.controller = controller;
        this.preferences = preferences;
        getStyleClass().add("workbench");
        getStylesheets().add(Theme.own());
        if (!Platform.isSupported(ConditionalFeature.TRANSPARENT_WINDOW)) {
            getStyleClass().add("opaque");
        }
        actions = new Actions(bench, controller, choosers, this);
        viewer = new Viewer(bench);
        tools = new Toolbar(bench, actions, viewer);
        ribbon = new TimeRibbon(bench);
        shift = new ShiftPanel(bench);
        detail = new DetailPanel(bench);
        StatusLine status = new StatusLine(bench, controller, actions::reveal);
        PixelPicker picker = new PixelPicker();
        new PointerInput(bench, viewer.view(), shift, picker, at -> status.show(viewer.shown(), viewer.system(), at));
        Map<Topic, Panel> panels = new EnumMap<>(Topic.class);
        panels.put(Topic.SESSION, new SessionPanel(bench, preferences));
        panels.put(Topic.FRAME, new FramePanel(bench, viewer.previewProperty()));
        panels.put(Topic.DISK, new DiskPanel(bench));
        panels.put(Topic.SHIFT, shift);
        colour = new ColourPanel(bench, picker, actions::measureWhite);
        panels.put(Topic.COLOUR, colour);
        panels.put(Topic.DETAIL, detail);
        panels.put(Topic.FRAMING, new FramingPanel(bench, preferences, picker));
        panels.put(Topic.EVIDENCE, new EvidencePanel(bench, actions::saveReport));
        keys.setVisible(false);
        taking.getStyleClass().add("taking");
        taking.setMouseTransparent(true);
        taking.setVisible(false);
        StartPage invitation = new StartPage(bench, controller, preferences, actions::open, this::showPlan);
        plan = new PlanPage(preferences, controller.runner(), new PlanUse(bench, preferences)::use, actions::savePlan);
        bars = new MessageBars(bench, this);
        setup = new SetupPage(bench, preferences);
        products = new ProductsPage(controller.exports()::saveAll);
        BorderPane middle =
                new BorderPane(new StackPane(viewer, invitation.scrolled(), products.scrolled(), setup.scrolled()));
        side = new SidePanel(bench, panels);
        middle.setRight(side);
        setTop(new VBox(tools, bars));
        setCenter(new StackPane(middle, plan, help, keys, taking));
        setBottom(new VBox(new VerdictLine(bench), ribbon, status));
        Shortcuts shortcuts = new Shortcuts(bench, this, actions, viewer, tools);
        addEventFilter(KeyEvent.KEY_PRESSED, shortcuts::pressed);
        setOnDragOver(this::over);
        setOnDragEntered(e -> taking.setVisible(e.getDragboard().hasFiles()));
        setOnDragExited(e -> taking.setVisible(false));
        setOnDragDropped(this::dropped);
        setTheme(Theme.named(preferences.theme()));
    }

    /** Makes ready, bit by bit, what will be shown later. */
    public void prepare() {
        side.prepare();
    }

    /** Changes how the window looks, and remembers it. */
    void setTheme(Theme theme) {
        Application.setUserAgentStylesheet(theme.base());
        theme.on(this);
        viewer.setPalette(theme.palette());
        ribbon.setPalette(theme.palette());
        shift.setPalette(theme.palette());
        detail.setPalette(theme.palette());
        colour.setPalette(theme.palette());
        plan.setPalette(theme.palette());
        tools.showTheme(theme);
        if (!preferences.theme().equals(theme.name())) {
            preferences.setTheme(theme.name());
        }
    }

    void say(String sentence) {
        controller.say(sentence);
    }

    void showKeys() {
        keys.setVisible(!keys.isVisible());
    }

    /** Shows what is kept from session to session, to change it. */
    void showSetup() {
        setup.open();
    }

    /** Asks which products are saved together. */
    void showProducts(Path folder, String name) {
        products.open(folder, name);
    }

    /** Shows the page that plans a night, the coming one at first. */
    void showPlan() {
        plan.open(LocalDate.now(ZoneId.systemDefault()));
    }

    void showHelp() {
        if (help.isVisible()) {
            hideHelp();
        } else {
            help.open();
        }
    }

    private void hideHelp() {
        help.setVisible(false);
    }

    /** Closes what lies over the picture, or else stops the work. */
    void escape() {
        if (help.isVisible()) {
            hideHelp();
        } else if (products.isVisible()) {
            products.setVisible(false);
        } else if (setup.isVisible()) {
            setup.setVisible(false);
        } else if (keys.isVisible()) {
            keys.setVisible(false);
        } else if (plan.isVisible()) {
            plan.close();
        } else {
            bench.renderer().cancel();
        }
    }

    /** Takes files as if they were dropped in. */
    public void take(List<Path> files) {
        actions.take(files);
    }

    /** Does something that would lose unsaved work, after asking in place. */
    void guarded(String what, Runnable action) {
        bars.remove("unsaved");
        if (!bench.unsaved()) {
            action.run();
            return;
        }
        Button save = new Button(Texts.of("question.save"));
        save.getStyleClass().add("accent");
        Button without = new Button(Texts.of("question.dontSave"));
        without.setId("dont-save");
        Button cancel = new Button(Texts.of("question.cancel"));
        cancel.setId("keep-session");
        bars.add("unsaved", Texts.of("question.unsaved", what), List.of(save, without, cancel));
        Runnable gone = () -> bars.remove("unsaved");
        save.setOnAction(e -> {
            gone.run();
            actions.saveThen(action);
        });
        without.setOnAction(e -> {
            gone.run();
            controller.giveUpChanges();
            action.run();
        });
        cancel.setOnAction(e -> gone.run());
        save.requestFocus();
    }

    /** Asks whether the window may close, and closes it. */
    public void leave(Runnable close) {
        guarded(Texts.of("question.quit"), () -> {
            controller.forgetUnsaved();
            close.run();
        });
    }

    private void over(DragEvent e) {
        if (e.getDragboard().hasFiles()) {
            e.acceptTransferModes(TransferMode.COPY);
        }
        e.consume();
    }

    private void dropped(DragEvent e) {
        List<File> files = e.getDragboard().getFiles();
        actions.take(files.stream().map(File::toPath).toList());
        e.setDropCompleted(true);
        e.consume();
    }
}

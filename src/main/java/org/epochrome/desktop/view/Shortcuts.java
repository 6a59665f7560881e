package org.epochrome.desktop.view;

import java.util.EnumSet;
import java.util.List;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.picture.Overlay;
import org.epochrome.desktop.state.Topic;

/** What keys do anywhere in the window; letters only where nobody types. */
final class Shortcuts {
    /** With Alt, one for each topic. */
    private static final List<KeyCode> TOPIC_KEYS = List.of(
            KeyCode.DIGIT1,
            KeyCode.DIGIT2,
            KeyCode.DIGIT3,
            KeyCode.DIGIT4,
            KeyCode.DIGIT5,
            KeyCode.DIGIT6,
            KeyCode.DIGIT7,
            KeyCode.DIGIT8);

    private final Workspace bench;
    private final Workbench workbench;
    private final Actions actions;
    private final Viewer viewer;
    private final Toolbar tools;

    Shortcuts(Workspace bench, Workbench workbench, Actions actions, Viewer viewer, Toolbar tools) {
        this.bench = bench;
        this.workbench = workbench;
        this.actions = actions;
        this.viewer = viewer;
        this.tools = tools;
    }

    void pressed(KeyEvent e) {
        if (e.isShortcutDown() ? control(e) : e.isAltDown() ? topic(e) : plain(e)) {
            e.consume();
        }
    }

    private boolean control(KeyEvent e) {
        boolean typing = e.getTarget() instanceof TextInputControl;
        switch (e.getCode()) {
            case O -> actions.open();
            case S -> {
                if (e.isShiftDown()) {
                    actions.saveAs();
                } else {
                    actions.save();
                }
            }
            case E -> {
                if (e.isShiftDown()) {
                    actions.saveSeveral();
                } else {
                    actions.savePicture();
                }
            }
            case R -> actions.saveReport();
            case P -> actions.showPlan();
            case W -> actions.close();
            case COMMA -> actions.showSetup();
            case Z -> {
                if (typing) {
                    return false;
                }
                if (e.isShiftDown()) {
                    bench.redo();
                } else {
                    bench.undo();
                }
            }
            case Y -> {
                if (typing) {
                    return false;
                }
                bench.redo();
            }
            case C -> {
                if (!e.isShiftDown()) {
                    return false;
                }
                actions.copyCommand();
            }
            default -> {
                return false;
            }
        }
        return true;
    }

    private boolean topic(KeyEvent e) {
        int number = TOPIC_KEYS.indexOf(e.getCode());
        if (number < 0) {
            return false;
        }
        bench.select(List.copyOf(EnumSet.allOf(Topic.class)).get(number));
        return true;
    }

    private boolean plain(KeyEvent e) {
        if (e.getCode() == KeyCode.F1) {
            if (e.isShiftDown()) {
                workbench.showHelp();
            } else {
                workbench.showKeys();
            }
            return true;
        }
        if (e.getCode() == KeyCode.ESCAPE && !(e.getTarget() instanceof TextInputControl)) {
            workbench.escape();
            return true;
        }
        if (e.getTarget() instanceof TextInputControl) {
            return false;
        }
        switch (e.getCode()) {
            case F -> viewer.view().fit();
            case Z -> viewer.view().closeUp();
            case DIGIT1, NUMPAD1 -> viewer.view().trueSize();
            case U -> viewer.unroll();
            case S -> {
                if (e.isShiftDown()) {
                    tools.toggleProcessing();
                } else {
                    tools.toggleSplit();
                }
            }
            case B -> tools.toggleBlink();
            case L -> tools.toggle(Overlay.LIMB);
            case G -> tools.toggle(Overlay.GRATICULE);
            case T -> tools.toggle(Overlay.TERMINATOR);
            case R -> tools.toggle(Overlay.RINGS);
            case P -> tools.toggle(Overlay.ARROWS);
            case D -> tools.toggle(Overlay.DISPERSION);
            default -> {
                return false;
            }
        }
        return true;
    }
}

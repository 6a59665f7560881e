package org.epochrome.desktop.view;

import java.util.Optional;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import org.epochrome.desktop.picture.PlanetView;
import org.epochrome.desktop.picture.TimeRibbon;
import org.epochrome.desktop.state.LimbHandles;
import org.epochrome.desktop.state.Zoom;
import org.epochrome.desktop.style.Theme;

/** Looks into the workbench where tests must know where something is. */
public final class Probe {
    private Probe() {}

    public static double epochX(Workbench workbench) {
        return ((TimeRibbon) workbench.lookup("#ribbon")).epochX().orElseThrow();
    }

    public static Node root(Workbench workbench) {
        return workbench;
    }

    public static void theme(Workbench workbench, String name) {
        workbench.setTheme(Theme.named(name));
    }

    public static Optional<Point2D> handle(Workbench workbench, String grip) {
        PlanetView view = (PlanetView) workbench.lookup("#planet");
        Zoom zoom = view.zoomProperty().get();
        return view.handles()
                .flatMap(h -> h.handles().stream()
                        .filter(handle -> handle.grip() == LimbHandles.Grip.valueOf(grip))
                        .findFirst())
                .map(h -> view.localToScreen(zoom.viewX(h.x()), zoom.viewY(h.y())));
    }

    public static void escape(Workbench workbench) {
        workbench.escape();
    }
}

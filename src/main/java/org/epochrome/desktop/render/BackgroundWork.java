package org.epochrome.desktop.render;

import javafx.beans.property.BooleanProperty;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;

/** What goes on in the background, for people. */
public final class BackgroundWork implements LatestTaskRunner.Listener {
    private final BooleanProperty busy = new SimpleBooleanProperty();
    private final DoubleProperty fraction = new SimpleDoubleProperty();
    private final StringProperty doing = new SimpleStringProperty("");

    public BooleanProperty busyProperty() {
        return busy;
    }

    public DoubleProperty fractionProperty() {
        return fraction;
    }

    public StringProperty doingProperty() {
        return doing;
    }

    public void begins(String what) {
        busy.set(true);
        fraction.set(0);
        doing.set(what);
    }

    public void ends() {
        busy.set(false);
        doing.set("");
    }

    @Override
    public void at(double part, String what) {
        fraction.set(part);
        if (!what.isEmpty()) {
            doing.set(what);
        }
    }
}

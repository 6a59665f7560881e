package org.epochrome.about;

import java.util.LinkedHashSet;
import java.util.Set;

/** The licences of the program and its libraries as a page of text. */
public final class Licences {
    private static final String RULE = "\n" + "-".repeat(80) + "\n\n";

    private Licences() {}

    /**
     * A list of the libraries with their licences, then each text of a licence once.
     *
     * @param heading of the list
     */
    public static String page(String heading) {
        StringBuilder page = new StringBuilder(heading).append("\n\n");
        Set<String> texts = new LinkedHashSet<>();
        for (Component component : Component.ALL) {
            page.append(component.name())
                    .append("  (")
                    .append(component.copyright())
                    .append("): ")
                    .append(component.licence())
                    .append('\n');
            texts.addAll(component.texts());
        }
        texts.forEach(text -> page.append(RULE).append(text).append("\n\n").append(Component.text(text)));
        return page.toString();
    }
}

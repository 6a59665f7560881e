package org.epochrome.command;

/** Failures that crossed threads arrive wrapped in copies of themselves; the first one has the right message. */
final class Causes {
    private Causes() {}

    static RuntimeException original(RuntimeException e) {
        RuntimeException found = e;
        for (Throwable t = e; t != null; t = t.getCause()) {
            if (t instanceof RuntimeException r && r.getClass().getName().startsWith("org.epochrome.")) {
                return r;
            }
        }
        return found;
    }
}

package org.epochrome.command;

/** Where the program starts. */
public final class Main {
    private Main() {}

    public static void main(String[] args) {
        System.err.println("Nothing to do yet.");
    }
}

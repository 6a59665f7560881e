package org.epochrome.command;

import picocli.CommandLine.IVersionProvider;

/** The program's version, from the jar's manifest. */
final class Version implements IVersionProvider {
    static final String NUMBER = number();

    private static String number() {
        String version = Version.class.getPackage().getImplementationVersion();
        return version == null ? "development" : version;
    }

    @Override
    public String[] getVersion() {
        return new String[] {"Epochrome " + NUMBER};
    }
}

package org.epochrome.command.option;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.epochrome.io.write.OutputFormat;
import org.epochrome.session.product.Products;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The files that are to be made. */
final class ProductOptions {
    private static final int FLOAT_BITS = 32;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(
            names = {"-o", "--out"},
            paramLabel = "FILE",
            description =
                    "File to write (repeatable); its extension selects the format: .fits for the linear colour cube,"
                            + " .tif or .png for a finished 16-bit picture, .jpg for one to share. Default:"
                            + " PLANET-EPOCH.png in the current folder.")
    private List<Path> out = new ArrayList<>();

    @Option(
            names = "--depth",
            paramLabel = "16|32",
            description = "Bits per sample of a .tif: 16 for integers, 32 for floats, whose highlights are not"
                    + " clipped. Default: 16.")
    private Integer depth;

    @Option(
            names = {"-r", "--report"},
            paramLabel = "FILE",
            description = "File for a report of all results (repeatable): .json for programs, .html with pictures for"
                    + " reading and printing.")
    private List<Path> reports = new ArrayList<>();

    @Mixin
    private GlobeOptions globe;

    /** What was typed, on top of what was wanted before. */
    Products over(Products before) {
        List<Path> pictures = out.isEmpty() ? before.pictures() : out;
        try {
            return new Products(
                    pictures,
                    depth == null ? before.tiffBits() : bits(pictures),
                    reports.isEmpty() ? before.reports() : reports,
                    globe.map(before.map()),
                    globe.turning(before.turning()));
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage());
        }
    }

    private int bits(List<Path> pictures) {
        boolean tiff = pictures.stream().anyMatch(f -> OutputFormat.of(f) == OutputFormat.TIFF);
        if (depth != 16 && depth != FLOAT_BITS) {
            throw new IllegalArgumentException("--depth must be 16 or 32, not " + depth + ".");
        }
        if (depth == FLOAT_BITS && !tiff) {
            throw new IllegalArgumentException(
                    "--depth 32 is for TIFF only; name a .tif with --out, or a .fits for linear data.");
        }
        return depth;
    }
}

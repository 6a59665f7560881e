package org.epochrome.command.option;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.epochrome.io.write.OutputFormat;
import org.epochrome.session.product.Products;
import org.epochrome.text.Message;
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
            paramLabel = "FILE")
    private List<Path> out = new ArrayList<>();

    @Option(names = "--depth", paramLabel = "16|32")
    private Integer depth;

    @Option(
            names = {"-r", "--report"},
            paramLabel = "FILE")
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

    /** The files among those wanted before that nothing typed takes the place of. */
    List<Path> kept(Products before) {
        List<Path> kept = new ArrayList<>();
        if (out.isEmpty()) {
            kept.addAll(before.pictures());
        }
        if (reports.isEmpty()) {
            kept.addAll(before.reports());
        }
        kept.addAll(globe.kept(before));
        return kept;
    }

    private int bits(List<Path> pictures) {
        boolean tiff = pictures.stream().anyMatch(f -> OutputFormat.of(f) == OutputFormat.TIFF);
        if (depth != 16 && depth != FLOAT_BITS) {
            throw new IllegalArgumentException(Message.text("option.depth", depth));
        }
        if (depth == FLOAT_BITS && !tiff) {
            throw new IllegalArgumentException(Message.text("option.depthOfTiff"));
        }
        return depth;
    }
}

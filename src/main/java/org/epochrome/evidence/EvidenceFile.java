package org.epochrome.evidence;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.epochrome.colour.finish.Look;
import org.epochrome.io.file.OutputFolder;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.product.ProductFile;
import org.epochrome.session.report.Outputs;

/**
 * The evidence report as a file.
 *
 * @param file an HTML page
 */
public record EvidenceFile(Path file) implements ProductFile {
    @Override
    public void check(boolean overwrite) {
        OutputFolder.checkFree(file, overwrite);
    }

    @Override
    public void write(Combination c, Look look, boolean overwrite, String version) {
        Outputs like = new Outputs(List.of(), Optional.empty(), look, false, overwrite);
        Outputs.writeReport(file, EvidenceReport.of(c, like, version), overwrite);
    }
}

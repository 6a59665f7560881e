package org.epochrome.io.fits;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.epochrome.io.head.FitsKeywords;
import org.epochrome.io.head.HeaderGeometry;

/**
 * Reads scale, north and mirroring from a FITS header: from a linear celestial coordinate system (Greisen and Calabretta 2002,
 * A&amp;A 395, 1061; Calabretta and Greisen 2002, A&amp;A 395, 1077), or the scale alone from common keywords.
 */
final class FitsGeometry {
    private static final double ARCSEC_PER_DEG = 3600;
    /** Arcsec per pixel of a micrometre behind a focal length of a millimetre: 1e-3 rad. */
    private static final double ARCSEC_PER_MILLIRADIAN = 206.264806;

    private static final double FINEST_ARCSEC = 1e-4;
    private static final double COARSEST_ARCSEC = 1000;
    /** In the order in which they count, most definite first; common practice, no source. */
    private static final List<String> SCALES = List.of("PIXSCALE", "SECPIX", "SECPIX1", "SCALE");

    private final FitsKeywords header;
    private final boolean topDown;

    private FitsGeometry(FitsKeywords header, boolean topDown) {
        this.header = header;
        this.topDown = topDown;
    }

    /**
     * Reads the geometry of a header.
     *
     * @param own keywords of the unit that holds the image
     * @param all these and those inherited from the primary header
     * @param topDown whether the first stored row is shown on top
     */
    static HeaderGeometry of(FitsKeywords own, FitsKeywords all, boolean topDown) {
        // The elements of one matrix must come from one header.
        boolean ownSystem =
                Stream.of("CTYPE1", "CD1_1", "CDELT1").anyMatch(k -> own.text(k).isPresent());
        FitsGeometry system = new FitsGeometry(ownSystem ? own : all, topDown);
        Optional<Matrix> matrix = system.matrix().filter(Matrix::isPlausible);
        return matrix.isPresent() ? system.by(matrix.get()) : new FitsGeometry(all, topDown).byScale();
    }

    /**
     * Sky coordinates by pixel coordinates, degrees per pixel: the first row eastward, the second northward; columns along the
     * stored row and from row to row.
     */
    private record Matrix(double eastX, double eastY, double northX, double northY, String source) {
        double determinant() {
            return eastX * northY - eastY * northX;
        }

        double arcsecPerPx() {
            return ARCSEC_PER_DEG * Math.sqrt(Math.abs(determinant()));
        }

        boolean isPlausible() {
            return FitsGeometry.isPlausible(arcsecPerPx());
        }
    }

    private HeaderGeometry by(Matrix m) {
        OptionalDouble scale = OptionalDouble.of(m.arcsecPerPx());
        if (!isEquatorial()) {
            return new HeaderGeometry(scale, m.source, OptionalDouble.empty(), Optional.empty(), "");
        }
        // The step in pixels that leads one degree north; only its direction counts.
        double right = -m.eastY / m.determinant();
        double along = m.eastX / m.determinant();
        double up = topDown ? -along : along;
        // Adding 0 turns a negative zero, for which atan2 gives -180, into a plain one.
        double north = Math.toDegrees(Math.atan2(-right + 0.0, up + 0.0));
        boolean mirrored = m.determinant() > 0 != topDown;
        return new HeaderGeometry(scale, m.source, OptionalDouble.of(north), Optional.of(mirrored), m.source);
    }

    private Optional<Matrix> matrix() {
        boolean swapped = header.text("CTYPE1").filter(t -> t.startsWith("DEC")).isPresent();
        return stored().map(m -> swapped
                ? new Matrix(
                        /* eastX= */ m.northX,
                        /* eastY= */ m.northY,
                        /* northX= */ m.eastX,
                        /* northY= */ m.eastY,
                        m.source)
                : m);
    }

    private Optional<Matrix> stored() {
        double unit1 = unitDeg("CUNIT1");
        double unit2 = unitDeg("CUNIT2");
        if (number("CD1_1").isPresent() || number("CD1_2").isPresent()) {
            return Optional.of(new Matrix(
                    unit1 * number("CD1_1").orElse(0),
                    unit1 * number("CD1_2").orElse(0),
                    unit2 * number("CD2_1").orElse(0),
                    unit2 * number("CD2_2").orElse(0),
                    "CD matrix"));
        }
        if (number("CDELT1").isEmpty() || number("CDELT2").isEmpty()) {
            return Optional.empty();
        }
        double step1 = unit1 * number("CDELT1").getAsDouble();
        double step2 = unit2 * number("CDELT2").getAsDouble();
        boolean pc = Stream.of("PC1_1", "PC1_2", "PC2_1", "PC2_2")
                .anyMatch(k -> number(k).isPresent());
        if (pc) {
            return Optional.of(new Matrix(
                    step1 * number("PC1_1").orElse(1),
                    step1 * number("PC1_2").orElse(0),
                    step2 * number("PC2_1").orElse(0),
                    step2 * number("PC2_2").orElse(1),
                    "PC matrix"));
        }
        if (number("CROTA2").isPresent()) {
            double rotation = Math.toRadians(number("CROTA2").getAsDouble());
            // Calabretta and Greisen 2002, equation 189.
            return Optional.of(new Matrix(
                    step1 * Math.cos(rotation),
                    -step2 * Math.sin(rotation),
                    step1 * Math.sin(rotation),
                    step2 * Math.cos(rotation),
                    "CROTA2"));
        }
        return Optional.of(
                number("ORIENTAT").isPresent()
                        ? oriented(
                                step1, step2, Math.toRadians(number("ORIENTAT").getAsDouble()))
                        : new Matrix(step1, 0, 0, step2, "CDELT"));
    }

    /**
     * The matrix by the position angle of the axis from row to row, from north through east; the signs of the steps tell the
     * sense of the other axis.
     */
    private static Matrix oriented(double step1, double step2, double angle) {
        double sense = Math.signum(step1 * step2);
        double size1 = Math.abs(step1);
        double size2 = Math.abs(step2);
        return new Matrix(
                sense * size1 * Math.cos(angle),
                size2 * Math.sin(angle),
                -sense * size1 * Math.sin(angle),
                size2 * Math.cos(angle),
                "ORIENTAT");
    }

    private boolean isEquatorial() {
        String first = header.text("CTYPE1").orElse("").toUpperCase(Locale.ROOT);
        String second = header.text("CTYPE2").orElse("").toUpperCase(Locale.ROOT);
        return (first.startsWith("RA") && second.startsWith("DEC"))
                || (first.startsWith("DEC") && second.startsWith("RA"));
    }

    private HeaderGeometry byScale() {
        for (String keyword : SCALES) {
            OptionalDouble value = number(keyword);
            if (value.isPresent() && isPlausible(Math.abs(value.getAsDouble()))) {
                return scale(Math.abs(value.getAsDouble()), keyword);
            }
        }
        return byFocalLength();
    }

    /** By the SBFITSEXT convention XPIXSZ is the pixel as binned, in micrometres, FOCALLEN in millimetres. */
    private HeaderGeometry byFocalLength() {
        double focalMm = number("FOCALLEN").orElse(0);
        double binning = number("XBINNING").orElse(1);
        OptionalDouble binned = number("XPIXSZ");
        OptionalDouble plain = number("PIXSIZE1");
        double pixelMicron = binned.orElse(plain.orElse(0) * binning);
        double arcsec = ARCSEC_PER_MILLIRADIAN * pixelMicron / focalMm;
        return focalMm > 0 && isPlausible(arcsec)
                ? scale(arcsec, "FOCALLEN and " + (binned.isPresent() ? "XPIXSZ" : "PIXSIZE1"))
                : HeaderGeometry.UNKNOWN;
    }

    private static HeaderGeometry scale(double arcsecPerPx, String source) {
        return new HeaderGeometry(OptionalDouble.of(arcsecPerPx), source, OptionalDouble.empty(), Optional.empty(), "");
    }

    private static boolean isPlausible(double arcsecPerPx) {
        return arcsecPerPx >= FINEST_ARCSEC && arcsecPerPx <= COARSEST_ARCSEC;
    }

    private double unitDeg(String keyword) {
        return switch (header.text(keyword).orElse("deg").toLowerCase(Locale.ROOT)) {
            case "arcsec" -> 1 / ARCSEC_PER_DEG;
            case "arcmin" -> 1 / 60.0;
            case "rad" -> Math.toDegrees(1);
            case "deg", "degree", "degrees" -> 1;
            // Not an angle.
            default -> Double.NaN;
        };
    }

    private OptionalDouble number(String keyword) {
        return header.number(keyword)
                .map(BigDecimal::doubleValue)
                .map(OptionalDouble::of)
                .orElse(OptionalDouble.empty());
    }
}

package org.epochrome.io.fits;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import org.epochrome.image.Plane;

/**
 * An image of 32-bit floats, rows from the bottom up, NaN for no data.
 *
 * @param name EXTNAME; empty for none
 * @param planes one or more, of the same size
 * @param cards further keywords, in this order; text outside ASCII is written without its accents
 * @param history what was done to the image, a line each; long ones are continued
 */
public record FitsImage(String name, List<Plane> planes, List<FitsCard> cards, List<String> history)
        implements FitsUnit {
    private static final int FLOAT_BYTES = 4;

    public FitsImage {
        if (planes.isEmpty() || !planes.stream().allMatch(p -> p.sameSize(planes.get(0)))) {
            throw new IllegalArgumentException("The planes of an image must have the same size.");
        }
    }

    @Override
    public List<FitsCard> structure(boolean first) {
        List<FitsCard> all = new ArrayList<>();
        all.add(
                first
                        ? new FitsCard("SIMPLE", true, "conforms to FITS standard")
                        : new FitsCard("XTENSION", "IMAGE", "image extension"));
        all.add(new FitsCard("BITPIX", -8 * FLOAT_BYTES, "32-bit floating point"));
        all.add(new FitsCard("NAXIS", planes.size() == 1 ? 2 : 3, ""));
        all.add(new FitsCard("NAXIS1", planes.get(0).width(), "[pixel] width"));
        all.add(new FitsCard("NAXIS2", planes.get(0).height(), "[pixel] height"));
        if (planes.size() > 1) {
            all.add(new FitsCard("NAXIS3", planes.size(), planes.size() == 3 ? "red, green, blue" : ""));
        }
        if (!first) {
            all.add(new FitsCard("PCOUNT", 0, ""));
            all.add(new FitsCard("GCOUNT", 1, ""));
        }
        all.add(new FitsCard("ROWORDER", "BOTTOM-UP", "the first row is the bottom one"));
        return all;
    }

    @Override
    public void writeData(OutputStream out) throws IOException {
        for (Plane plane : planes) {
            for (int y = plane.height() - 1; y >= 0; y--) {
                ByteBuffer bytes = ByteBuffer.allocate(plane.width() * FLOAT_BYTES);
                for (int x = 0; x < plane.width(); x++) {
                    bytes.putFloat(plane.at(x, y));
                }
                out.write(bytes.array());
            }
        }
    }
}

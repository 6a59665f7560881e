package org.epochrome.io.write;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.zip.DeflaterOutputStream;
import javax.imageio.ImageWriteParam;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.metadata.IIOMetadataNode;

/**
 * Says in a PNG that it is sRGB (by its profile, grey by the chunk sRGB; gAMA for old readers), and tells its description, software and time
 * as text.
 */
record PngCaption(PictureWriter.Caption caption) implements PictureWriter.Labels {
    private static final String FORMAT = "javax_imageio_png_1.0";
    // 1 / 2.2 in the unit of the chunk, as the PNG specification has it for sRGB (second edition, section 11.3.3.5).
    private static final String SRGB_GAMMA = "45455";

    @Override
    public void configure(ImageWriteParam param) {
        // The defaults of PNG lose nothing.
    }

    @Override
    public void describe(IIOMetadata metadata, boolean grey) throws IOException {
        IIOMetadataNode root = new IIOMetadataNode(FORMAT);
        IIOMetadataNode gamma = new IIOMetadataNode("gAMA");
        gamma.setAttribute("value", SRGB_GAMMA);
        root.appendChild(gamma);
        // Of the two ways to say sRGB the specification wants one only; the profile is the one that all readers know.
        if (!grey) {
            IIOMetadataNode profile = new IIOMetadataNode("iCCP");
            profile.setAttribute("profileName", "sRGB");
            profile.setAttribute("compressionMethod", "deflate");
            profile.setUserObject(deflated(PictureWriter.srgb().getData()));
            root.appendChild(profile);
        } else {
            IIOMetadataNode srgb = new IIOMetadataNode("sRGB");
            srgb.setAttribute("renderingIntent", "Perceptual");
            root.appendChild(srgb);
        }
        IIOMetadataNode texts = new IIOMetadataNode("iTXt");
        texts.appendChild(text("Description", caption.description()));
        texts.appendChild(text("Software", caption.software()));
        caption.shown().ifPresent(instant -> texts.appendChild(text("Creation Time", instant.toString())));
        root.appendChild(texts);
        metadata.mergeTree(FORMAT, root);
    }

    private static byte[] deflated(byte[] plain) throws IOException {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (DeflaterOutputStream out = new DeflaterOutputStream(packed)) {
            out.write(plain);
        }
        return packed.toByteArray();
    }

    private static IIOMetadataNode text(String keyword, String value) {
        IIOMetadataNode entry = new IIOMetadataNode("iTXtEntry");
        entry.setAttribute("keyword", keyword);
        entry.setAttribute("compressionFlag", "FALSE");
        entry.setAttribute("compressionMethod", "0");
        entry.setAttribute("languageTag", "");
        entry.setAttribute("translatedKeyword", "");
        entry.setAttribute("text", value);
        return entry;
    }
}

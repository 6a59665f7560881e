package org.epochrome.io.write;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import javax.imageio.ImageWriteParam;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.metadata.IIOMetadataNode;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** Sets a JPEG to little loss and full colour resolution (4:4:4), with the sRGB profile, Exif and a comment. */
record JpegCaption(PictureWriter.Caption caption) implements PictureWriter.Labels {
    private static final float QUALITY = 0.95f;
    private static final int APP1 = 0xe1;

    @Override
    public void configure(ImageWriteParam param) {
        param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
        param.setCompressionQuality(QUALITY);
    }

    @Override
    public void describe(IIOMetadata metadata, boolean grey) throws IOException {
        String format = metadata.getNativeMetadataFormatName();
        Element root = (Element) metadata.getAsTree(format);
        NodeList components = root.getElementsByTagName("componentSpec");
        for (int i = 0; i < components.getLength(); i++) {
            ((Element) components.item(i)).setAttribute("HsamplingFactor", "1");
            ((Element) components.item(i)).setAttribute("VsamplingFactor", "1");
        }
        IIOMetadataNode comment = new IIOMetadataNode("com");
        String text = caption.shown()
                .map(at -> caption.description() + " (" + at + ")")
                .orElse(caption.description());
        comment.setUserObject(text.getBytes(StandardCharsets.UTF_8));
        Element sequence = (Element) root.getElementsByTagName("markerSequence").item(0);
        sequence.insertBefore(comment, sequence.getFirstChild());
        IIOMetadataNode exif = new IIOMetadataNode("unknown");
        exif.setAttribute("MarkerTag", Integer.toString(APP1));
        exif.setUserObject(ExifBlock.of(caption));
        sequence.insertBefore(exif, comment);
        metadata.setFromTree(format, root);
    }
}

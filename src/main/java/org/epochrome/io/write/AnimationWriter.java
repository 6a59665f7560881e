package org.epochrome.io.write;

import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import javax.imageio.IIOImage;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.metadata.IIOMetadataNode;
import javax.imageio.stream.ImageOutputStream;
import org.epochrome.image.Plane;
import org.epochrome.io.file.AtomicFile;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.file.OutputRefused;
import org.epochrome.io.fits.FitsWriter;
import org.epochrome.text.Message;
import org.w3c.dom.Element;

/**
 * Writes short animations that repeat for ever: GIF (256 colours for all of it, dithered) or animated PNG (8 bits a
 * colour). The same frames give the same bytes.
 */
public final class AnimationWriter {
    private static final String METADATA = "javax_imageio_gif_image_1.0";
    /** The name by which readers know the extension that makes a GIF repeat. */
    private static final String REPEATS = "NETSCAPE";

    private static final String REPEATS_CODE = "2.0";
    private static final byte[] FOR_EVER = {1, 0, 0};

    private AnimationWriter() {}

    /**
     * One picture and how long it stays.
     *
     * @param planes red, green, blue, display-encoded, 0 to 1
     * @param hundredths of a second
     */
    public record Still(List<Plane> planes, int hundredths) {}

    /**
     * Refuses a name whose extension is not a format for animations.
     *
     * @throws OutputRefused if it ends neither in .gif nor in .png
     */
    public static void checkName(Path file) {
        if (!isGif(file) && !FrameRefused.nameOf(file).toLowerCase(Locale.ROOT).endsWith(".png")) {
            throw new OutputRefused(file, Message.of("output.animationName"));
        }
    }

    /**
     * Writes an animation.
     *
     * @param stills at least one, all of the same size
     * @throws OutputRefused if the extension is not a format for animations, the file exists and may not be replaced, or it
     *     cannot be written
     */
    public static void write(Path file, List<Still> stills, PictureWriter.Caption caption, boolean overwrite) {
        checkName(file);
        if (isGif(file)) {
            AtomicFile.write(file, overwrite, part -> gif(part, stills, caption));
        } else {
            AtomicFile.write(file, overwrite, part -> AnimatedPng.write(part, stills, caption));
        }
    }

    private static boolean isGif(Path file) {
        return FrameRefused.nameOf(file).toLowerCase(Locale.ROOT).endsWith(".gif");
    }

    private static void gif(Path part, List<Still> stills, PictureWriter.Caption caption) throws IOException {
        Palette palette = Palette.of(stills.stream().map(Still::planes).toList());
        IndexColorModel colours = palette.model();
        ImageWriter writer = PictureWriter.writer("gif");
        try (ImageOutputStream out = new ChannelImageStream(part)) {
            writer.setOutput(out);
            writer.prepareWriteSequence(null);
            ImageWriteParam param = writer.getDefaultWriteParam();
            for (int i = 0; i < stills.size(); i++) {
                BufferedImage image = palette.dithered(stills.get(i).planes(), colours);
                // createFromRenderedImage would forget the palette.
                IIOMetadata metadata = writer.getDefaultImageMetadata(new ImageTypeSpecifier(image), param);
                describe(metadata, stills.get(i).hundredths(), i == 0, caption);
                writer.writeToSequence(new IIOImage(image, null, metadata), param);
            }
            writer.endWriteSequence();
        } finally {
            writer.dispose();
        }
    }

    private static void describe(IIOMetadata metadata, int hundredths, boolean first, PictureWriter.Caption caption)
            throws IOException {
        Element root = (Element) metadata.getAsTree(METADATA);
        Element control =
                (Element) root.getElementsByTagName("GraphicControlExtension").item(0);
        control.setAttribute("delayTime", Integer.toString(hundredths));
        control.setAttribute("disposalMethod", "doNotDispose");
        if (first) {
            IIOMetadataNode repeats = new IIOMetadataNode("ApplicationExtension");
            repeats.setAttribute("applicationID", REPEATS);
            repeats.setAttribute("authenticationCode", REPEATS_CODE);
            repeats.setUserObject(FOR_EVER.clone());
            IIOMetadataNode extensions = new IIOMetadataNode("ApplicationExtensions");
            extensions.appendChild(repeats);
            root.appendChild(extensions);
            IIOMetadataNode comment = new IIOMetadataNode("CommentExtension");
            comment.setAttribute("value", FitsWriter.ascii(caption.description()));
            IIOMetadataNode comments = new IIOMetadataNode("CommentExtensions");
            comments.appendChild(comment);
            root.appendChild(comments);
        }
        metadata.setFromTree(METADATA, root);
    }
}

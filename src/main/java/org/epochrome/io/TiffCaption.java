package org.epochrome.io;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import javax.imageio.ImageWriteParam;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.plugins.tiff.BaselineTIFFTagSet;
import javax.imageio.plugins.tiff.TIFFDirectory;
import javax.imageio.plugins.tiff.TIFFField;
import javax.imageio.plugins.tiff.TIFFTag;

/** Puts the sRGB profile, the description and the time shown into a TIFF, and packs it by Deflate. */
record TiffCaption(PictureWriter.Caption caption) implements PictureWriter.Labels {
    private static final DateTimeFormatter TIFF_TIME =
            DateTimeFormatter.ofPattern("yyyy:MM:dd HH:mm:ss", Locale.ROOT).withZone(ZoneOffset.UTC);

    @Override
    public void configure(ImageWriteParam param) {
        param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
        param.setCompressionType("ZLib");
    }

    @Override
    public void describe(IIOMetadata metadata, boolean grey) throws IOException {
        TIFFDirectory directory = TIFFDirectory.createFromMetadata(metadata);
        BaselineTIFFTagSet tags = BaselineTIFFTagSet.getInstance();
        directory.addTIFFField(text(tags.getTag(BaselineTIFFTagSet.TAG_IMAGE_DESCRIPTION), caption.description()));
        caption.shown()
                .ifPresent(instant -> directory.addTIFFField(
                        text(tags.getTag(BaselineTIFFTagSet.TAG_DATE_TIME), TIFF_TIME.format(instant))));
        if (!grey) {
            byte[] profile = PictureWriter.srgb().getData();
            directory.addTIFFField(new TIFFField(
                    tags.getTag(BaselineTIFFTagSet.TAG_ICC_PROFILE), TIFFTag.TIFF_UNDEFINED, profile.length, profile));
        }
        metadata.setFromTree(
                metadata.getNativeMetadataFormatName(),
                directory.getAsMetadata().getAsTree(metadata.getNativeMetadataFormatName()));
    }

    private static TIFFField text(TIFFTag tag, String value) {
        String ascii = new String(value.getBytes(StandardCharsets.US_ASCII), StandardCharsets.US_ASCII);
        return new TIFFField(tag, TIFFTag.TIFF_ASCII, 1, new String[] {ascii});
    }
}

package org.epochrome.io.write;

import java.io.IOException;
import javax.imageio.ImageWriteParam;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.plugins.tiff.BaselineTIFFTagSet;
import javax.imageio.plugins.tiff.TIFFDirectory;
import javax.imageio.plugins.tiff.TIFFField;
import javax.imageio.plugins.tiff.TIFFTag;
import org.epochrome.io.fits.FitsWriter;

/** Puts the sRGB profile, the description and the time shown into a TIFF, and packs it by Deflate. */
record TiffCaption(PictureWriter.Caption caption) implements PictureWriter.Labels {
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
        directory.addTIFFField(text(tags.getTag(BaselineTIFFTagSet.TAG_SOFTWARE), caption.software()));
        caption.shown()
                .ifPresent(instant -> directory.addTIFFField(
                        text(tags.getTag(BaselineTIFFTagSet.TAG_DATE_TIME), ExifBlock.TIME.format(instant))));
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
        return new TIFFField(tag, TIFFTag.TIFF_ASCII, 1, new String[] {FitsWriter.ascii(value)});
    }
}

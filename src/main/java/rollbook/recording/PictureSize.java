package rollbook.recording;

/**
 * Width and height of a picture in photosites, or in pixels once it is no longer a mosaic. Both zero means no picture, as
 * on a sound roll.
 */
public record PictureSize(int width, int height) {

    public static final PictureSize NONE = new PictureSize(0, 0);

    static final int LARGEST = 100_000;

    public PictureSize {
        if (width != 0 || height != 0) {
            InvalidFormat.requireWithin("pictureWidth", width, 1, LARGEST);
            InvalidFormat.requireWithin("pictureHeight", height, 1, LARGEST);
        }
    }

    public long photosites() {
        return (long) width * height;
    }

    public boolean isNone() {
        return width == 0;
    }

    /** Such as {@code 4096 × 2160}. */
    public String text() {
        return width + " × " + height;
    }
}

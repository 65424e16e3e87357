package rollbook.recording;

/**
 * How many colour components a picture keeps for each pixel, by the smallest block of pixels that repeats.
 *
 * <p>Packed, these blocks give the octets of the pixel groups in SMPTE ST 2110-20 tables 1 to 3 (4:4:4 10-bit: 15 octets for
 * 4 pixels). 4:1:1 is not in those tables; its block is the one of the DV family.
 */
public enum Sampling {
    S444("4:4:4", 1, 1, 3),
    S422("4:2:2", 2, 1, 4),
    S420("4:2:0", 2, 2, 6),
    S411("4:1:1", 4, 1, 6);

    private final String text;
    private final int blockWidth;
    private final int blockRows;
    private final int blockComponents;

    Sampling(String text, int blockWidth, int blockRows, int blockComponents) {
        this.text = text;
        this.blockWidth = blockWidth;
        this.blockRows = blockRows;
        this.blockComponents = blockComponents;
    }

    /** Such as {@code 4:2:2}. */
    public String text() {
        return text;
    }

    /** Components in one row of blocks; a block that the picture cuts counts whole. */
    long componentsPerBand(PictureSize size) {
        return ceilDiv(size.width(), blockWidth) * blockComponents;
    }

    /** Rows of blocks; a block that the picture cuts counts whole. */
    long bands(PictureSize size) {
        return ceilDiv(size.height(), blockRows);
    }

    private static long ceilDiv(long dividend, long divisor) {
        return (dividend + divisor - 1) / divisor;
    }
}

package rollbook.label;

import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;

/**
 * A QR code with its quiet zone, as squares of one module each.
 *
 * @param modules along one side, the quiet zone on both ends included
 * @param path of the dark modules, as the data of an SVG path: each run of a row is {@code M column row h length v1
 *     h-length z}
 */
public record QrSymbol(int modules, String path) {
    /** The standard (ISO/IEC 18004, from memory) wants four light modules around the symbol. */
    static final int QUIET_MODULES = 4;

    /**
     * With error correction M, which bears about 15 % of damage (ISO/IEC 18004, from memory).
     *
     * @throws IllegalArgumentException if the text is too long for any symbol
     */
    public static QrSymbol of(String text) {
        try {
            ByteMatrix matrix = Encoder.encode(text, ErrorCorrectionLevel.M).getMatrix();
            return new QrSymbol(matrix.getWidth() + 2 * QUIET_MODULES, path(matrix));
        } catch (WriterException tooLong) {
            throw new IllegalArgumentException("no QR code holds " + text.length() + " characters", tooLong);
        }
    }

    private static String path(ByteMatrix matrix) {
        StringBuilder path = new StringBuilder();
        for (int row = 0; row < matrix.getHeight(); row++) {
            int column = 0;
            while (column < matrix.getWidth()) {
                int from = column;
                while (column < matrix.getWidth() && matrix.get(column, row) == 1) {
                    column++;
                }
                if (column > from) {
                    int length = column - from;
                    path.append('M')
                            .append(from + QUIET_MODULES)
                            .append(' ')
                            .append(row + QUIET_MODULES)
                            .append('h')
                            .append(length)
                            .append("v1h-")
                            .append(length)
                            .append('z');
                } else {
                    column++;
                }
            }
        }
        return path.toString();
    }
}

package rollbook.inventory;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/** The text of an uploaded list. */
final class UploadedText {
    static final int MOST_BYTES = 1_000_000;
    static final int MOST_LINES = 5_000;

    private UploadedText() {}

    /** @throws CharacterCodingException if it is neither UTF-8 nor, by the mark at its beginning, UTF-16 */
    static String decode(byte[] bytes) throws CharacterCodingException {
        return charset(bytes).newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    }

    private static Charset charset(byte[] bytes) {
        if (bytes.length >= 2) {
            int mark = (bytes[0] & 0xFF) << 8 | bytes[1] & 0xFF;
            if (mark == 0xFEFF || mark == 0xFFFE) {
                return StandardCharsets.UTF_16;
            }
        }
        return StandardCharsets.UTF_8;
    }
}

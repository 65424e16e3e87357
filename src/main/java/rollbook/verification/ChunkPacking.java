package rollbook.verification;

import com.github.luben.zstd.Zstd;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * Packs a piece of a document so that each digest in it takes no more than its bytes: hexadecimal digits of a digest's
 * length are taken out of the text and kept as bytes, for no compressor can save on what is random, and what is left of
 * the text repeats itself. Unpacking gives the very bytes back, whatever they were. For one thread: it keeps its room.
 */
final class ChunkPacking {
    /** As small as higher levels make it, within a few hundredths of a byte for each file, and several times as fast. */
    private static final int LEVEL = 1;

    private static final int[] DIGEST_DIGITS = {16, 32, 40, 64, 128};
    private static final int LONGEST = 128;
    /**
     * From here on, a byte stands for a digest taken out: two for each length, of lower and of upper case. The last one
     * announces that the byte after it stands for itself. None of them occurs in UTF-8.
     */
    private static final int FIRST_SIGN = 0xF5;

    private static final int ITSELF = 0xFF;

    /** Lengths of the text before and after its compression. */
    private static final int HEAD_BYTES = 2 * Integer.BYTES;

    private static final int DECIMAL = 1;
    private static final int LOWER = 2;
    private static final int UPPER = 4;
    private static final int DIGIT = DECIMAL | LOWER | UPPER;
    private static final int ESCAPED = 8;
    private static final byte[] KINDS = new byte[256];
    private static final byte[] VALUES = new byte[256];
    private static final byte[] SIGNS = new byte[LONGEST + 1];
    private static final byte[] LOWER_DIGITS = "0123456789abcdef".getBytes(StandardCharsets.US_ASCII);
    private static final byte[] UPPER_DIGITS = "0123456789ABCDEF".getBytes(StandardCharsets.US_ASCII);

    static {
        Arrays.fill(KINDS, FIRST_SIGN, KINDS.length, (byte) ESCAPED);
        for (int value = 0; value < 16; value++) {
            VALUES[LOWER_DIGITS[value]] = (byte) value;
            VALUES[UPPER_DIGITS[value]] = (byte) value;
            KINDS[LOWER_DIGITS[value]] = (byte) (value < 10 ? DECIMAL : LOWER);
            KINDS[UPPER_DIGITS[value]] = (byte) (value < 10 ? DECIMAL : UPPER);
        }
        for (int i = 0; i < DIGEST_DIGITS.length; i++) {
            SIGNS[DIGEST_DIGITS[i]] = (byte) (FIRST_SIGN + 2 * i);
        }
    }

    /** How a chunk is kept; the number is in the database. */
    enum Codec {
        /** One zstd frame. */
        ZSTD,
        /** Digests apart from the text. */
        DIGESTS_APART
    }

    record Packed(Codec codec, byte[] content) {}

    private byte[] text = {};
    private byte[] digests = {};
    private byte[] compressed = {};
    private int textEnd;
    private int digestsEnd;

    Packed pack(byte[] chunk) {
        separate(chunk);
        if (digestsEnd == 0) {
            return new Packed(Codec.ZSTD, Zstd.compress(chunk, LEVEL));
        }
        int bound = Math.toIntExact(Zstd.compressBound(textEnd));
        compressed = compressed.length < bound ? new byte[bound] : compressed;
        int length = Math.toIntExact(Zstd.compressByteArray(compressed, 0, compressed.length, text, 0, textEnd, LEVEL));
        byte[] content = ByteBuffer.allocate(HEAD_BYTES + length + digestsEnd)
                .putInt(textEnd)
                .putInt(length)
                .put(compressed, 0, length)
                .put(digests, 0, digestsEnd)
                .array();
        return new Packed(Codec.DIGESTS_APART, content);
    }

    private void separate(byte[] chunk) {
        text = text.length < chunk.length * 2 ? new byte[chunk.length * 2] : text;
        digests = digests.length < chunk.length / 2 ? new byte[chunk.length / 2] : digests;
        textEnd = 0;
        digestsEnd = 0;
        int copied = 0;
        int at = 0;
        while (at < chunk.length) {
            int kind = KINDS[chunk[at] & 0xFF];
            if (kind == 0) {
                at++;
            } else if (kind == ESCAPED) {
                copy(chunk, copied, at);
                text[textEnd++] = (byte) ITSELF;
                copied = at++;
            } else {
                int start = at;
                int kinds = 0;
                while ((kind & DIGIT) != 0) {
                    kinds |= kind;
                    at++;
                    kind = at < chunk.length ? KINDS[chunk[at] & 0xFF] : 0;
                }
                if (isDigest(at - start, kinds)) {
                    copy(chunk, copied, start);
                    takeOut(chunk, start, at, kinds);
                    copied = at;
                }
            }
        }
        copy(chunk, copied, chunk.length);
    }

    private void copy(byte[] chunk, int from, int to) {
        System.arraycopy(chunk, from, text, textEnd, to - from);
        textEnd += to - from;
    }

    private void takeOut(byte[] chunk, int from, int to, int kinds) {
        text[textEnd++] = (byte) (SIGNS[to - from] + ((kinds & UPPER) == 0 ? 0 : 1));
        int end = digestsEnd;
        for (int i = from; i < to; i += 2) {
            digests[end++] = (byte) (VALUES[chunk[i]] << 4 | VALUES[chunk[i + 1]]);
        }
        digestsEnd = end;
    }

    private static boolean isDigest(int length, int kinds) {
        return length <= LONGEST && SIGNS[length] != 0 && (kinds & (LOWER | UPPER)) != (LOWER | UPPER);
    }

    /** @param size bytes of the chunk before it was packed */
    static byte[] unpack(Codec codec, byte[] content, int size) {
        return switch (codec) {
            case ZSTD -> Zstd.decompress(content, size);
            case DIGESTS_APART -> together(content, size);
        };
    }

    private static byte[] together(byte[] content, int size) {
        ByteBuffer head = ByteBuffer.wrap(content);
        byte[] text = new byte[head.getInt()];
        int compressed = head.getInt();
        Zstd.decompressByteArray(text, 0, text.length, content, HEAD_BYTES, compressed);
        int digest = HEAD_BYTES + compressed;
        byte[] chunk = new byte[size];
        int end = 0;
        for (int i = 0; i < text.length; i++) {
            int b = text[i] & 0xFF;
            if (b < FIRST_SIGN) {
                chunk[end++] = text[i];
            } else if (b == ITSELF) {
                chunk[end++] = text[++i];
            } else {
                byte[] letters = (b - FIRST_SIGN) % 2 == 0 ? LOWER_DIGITS : UPPER_DIGITS;
                for (int left = DIGEST_DIGITS[(b - FIRST_SIGN) / 2] / 2; left > 0; left--) {
                    chunk[end++] = letters[content[digest] >> 4 & 0xF];
                    chunk[end++] = letters[content[digest++] & 0xF];
                }
            }
        }
        if (end != size) {
            throw new IllegalStateException("A chunk of " + size + " bytes came out with " + end);
        }
        return chunk;
    }
}

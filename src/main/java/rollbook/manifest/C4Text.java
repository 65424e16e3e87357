package rollbook.manifest;

import java.math.BigInteger;
import org.jspecify.annotations.Nullable;

/**
 * The text form of a C4 ID: {@code c4} and the SHA-512 digest as an unsigned number in base 58, left-padded with the
 * zero digit {@code 1} to 88 digits. Base-58 routines of other uses pad by bytes and do not fit.
 */
final class C4Text {
    static final int LENGTH = 90;

    private static final String DIGITS = "123456789ABCDEFGHJKLMNPQRSTUVWXYZabcdefghijkmnopqrstuvwxyz";
    private static final int DIGEST_BYTES = 64;
    private static final int DIGITS_PER_STEP = 8;
    private static final long STEP = 128_063_081_718_016L; // 58^8, so that a step fits a long

    private C4Text() {}

    /** The 64 digest bytes, or null when the text is no C4 ID. Upper and lower case are different digits. */
    static byte @Nullable [] decode(String text) {
        if (text.length() != LENGTH || !text.startsWith("c4")) {
            return null;
        }
        BigInteger value = BigInteger.ZERO;
        for (int start = 2; start < LENGTH; start += DIGITS_PER_STEP) {
            long part = 0;
            for (int i = start; i < start + DIGITS_PER_STEP; i++) {
                int digit = DIGITS.indexOf(text.charAt(i));
                if (digit < 0) {
                    return null;
                }
                part = part * DIGITS.length() + digit;
            }
            value = value.multiply(BigInteger.valueOf(STEP)).add(BigInteger.valueOf(part));
        }
        return value.bitLength() > DIGEST_BYTES * 8 ? null : leftPadded(value.toByteArray());
    }

    static String encode(byte[] digest) {
        char[] text = new char[LENGTH];
        text[0] = 'c';
        text[1] = '4';
        BigInteger rest = new BigInteger(1, digest);
        for (int end = LENGTH; end > 2; end -= DIGITS_PER_STEP) {
            BigInteger[] divided = rest.divideAndRemainder(BigInteger.valueOf(STEP));
            long part = divided[1].longValueExact();
            for (int i = end - 1; i >= end - DIGITS_PER_STEP; i--) {
                text[i] = DIGITS.charAt((int) (part % DIGITS.length()));
                part /= DIGITS.length();
            }
            rest = divided[0];
        }
        return new String(text);
    }

    static boolean looksLikeC4(String text) {
        return text.length() == LENGTH && text.startsWith("c4");
    }

    private static byte[] leftPadded(byte[] number) {
        byte[] digest = new byte[DIGEST_BYTES];
        int length = Math.min(number.length, DIGEST_BYTES);
        System.arraycopy(number, number.length - length, digest, DIGEST_BYTES - length, length);
        return digest;
    }
}

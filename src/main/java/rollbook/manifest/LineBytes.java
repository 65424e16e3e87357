package rollbook.manifest;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/** Looks through bytes eight at a time. */
final class LineBytes {
    private static final VarHandle WORDS = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);
    private static final long LOW_BITS = 0x0101_0101_0101_0101L;
    private static final long HIGH_BITS = 0x8080_8080_8080_8080L;

    private LineBytes() {}

    /** Where the byte first occurs from one place up to another, or -1. */
    static int indexOf(byte[] bytes, byte wanted, int from, int to) {
        long pattern = (wanted & 0xFF) * LOW_BITS;
        int i = from;
        for (; i + Long.BYTES <= to; i += Long.BYTES) {
            // The lowest bit that is set here is the high bit of the first byte that is zero.
            long difference = (long) WORDS.get(bytes, i) ^ pattern;
            long zeros = difference - LOW_BITS & ~difference & HIGH_BITS;
            if (zeros != 0) {
                return i + (Long.numberOfTrailingZeros(zeros) >> 3);
            }
        }
        for (; i < to; i++) {
            if (bytes[i] == wanted) {
                return i;
            }
        }
        return -1;
    }

    /** Whether all of them are ASCII and none is NUL. */
    static boolean areText(byte[] bytes, int from, int to) {
        long bad = 0;
        int i = from;
        for (; i + Long.BYTES <= to; i += Long.BYTES) {
            long word = (long) WORDS.get(bytes, i);
            bad |= word | word - LOW_BITS & ~word;
        }
        boolean rest = true;
        for (; i < to; i++) {
            rest &= bytes[i] > 0;
        }
        return rest && (bad & HIGH_BITS) == 0;
    }
}

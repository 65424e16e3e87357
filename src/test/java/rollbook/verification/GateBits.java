package rollbook.verification;

/** Small numbers put one after the other into a few longs, and taken out again in the same order. */
final class GateBits {
    final long[] words;
    private int position;

    GateBits(long[] words) {
        this.words = words;
    }

    /** Begins again at the first number. */
    void rewind() {
        position = 0;
    }

    void clear() {
        rewind();
        java.util.Arrays.fill(words, 0);
    }

    void put(int value, int bits) {
        if (value < 0 || value >>> bits != 0) {
            throw new IllegalArgumentException(value + " doesn't fit into " + bits + " bits");
        }
        skipToRoom(bits);
        words[position >>> 6] |= (long) value << (position & 63);
        position += bits;
    }

    int take(int bits) {
        skipToRoom(bits);
        int value = (int) (words[position >>> 6] >>> (position & 63)) & (1 << bits) - 1;
        position += bits;
        return value;
    }

    /** No number lies across two longs. */
    private void skipToRoom(int bits) {
        if ((position & 63) + bits > 64) {
            position = (position | 63) + 1;
        }
    }
}

package rollbook.manifest;

import java.util.Arrays;
import java.util.BitSet;
import java.util.function.IntPredicate;

/** Positions by a key that several may share; each is given out once. Add all, then take. */
final class PositionsByKey {
    /** Equal keys of unequal files don't occur by accident; the bound keeps a hostile list from taking hours. */
    private static final int MOST_LOOKED_AT = 16;

    private static final int END = -1;

    private final BitSet taken;
    private long[] keys = new long[16];
    private int[] positions = new int[16];
    private int count;

    private int[] first = {};
    private int[] next = {};

    /** @param taken positions that are given out no more, whoever gave them out; taking adds to it */
    PositionsByKey(BitSet taken) {
        this.taken = taken;
    }

    void add(long key, int position) {
        if (count == keys.length) {
            keys = Arrays.copyOf(keys, count * 2);
            positions = Arrays.copyOf(positions, count * 2);
        }
        keys[count] = key;
        positions[count++] = position;
    }

    /** The first position of that key that fits, or negative; of very many only some are looked at. */
    int take(long key, IntPredicate fits) {
        if (next.length < count) {
            chain();
        }
        if (count == 0) {
            return END;
        }
        int slot = slot(key);
        int before = END;
        int looked = 0;
        for (int i = first[slot]; i != END && looked < MOST_LOOKED_AT; i = next[i]) {
            boolean gone = taken.get(positions[i]);
            if (!gone && (keys[i] != key || !fits.test(positions[i]))) {
                looked += keys[i] == key ? 1 : 0;
                before = i;
                continue;
            }
            if (before == END) {
                first[slot] = next[i];
            } else {
                next[before] = next[i];
            }
            if (!gone) {
                taken.set(positions[i]);
                return positions[i];
            }
        }
        return END;
    }

    private void chain() {
        first = new int[Math.max(16, Integer.highestOneBit(Math.max(1, count)) * 2)];
        Arrays.fill(first, END);
        next = new int[count];
        for (int i = count - 1; i >= 0; i--) {
            int slot = slot(keys[i]);
            next[i] = first[slot];
            first[slot] = i;
        }
    }

    private int slot(long key) {
        return (int) (key ^ key >>> 32) & first.length - 1;
    }
}

package rollbook.manifest;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.util.SplittableRandom;
import java.util.function.IntPredicate;

/**
 * Positions by a hash of the path, in a table that grows piece by piece. Equal hashes are only a hint: whoever looks
 * something up compares the path itself, so what is found never depends on the hash.
 */
final class PathIndex {
    private static final VarHandle WORDS = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);
    private static final int TABLES = 1 << 10;
    private static final int SMALLEST_TABLE = 8;
    /** Unknown to whoever writes a document, so that nobody can make paths whose hashes are all equal. */
    private static final long SEED = new SplittableRandom().nextLong();

    private static final long FACTOR = 0xA0761D6478BD642FL; // any odd number with bits all over

    /** Of each entry the upper half of the hash, then its position plus one; 0 is free. */
    private final long[][] tables = new long[TABLES][];

    private final int[] used = new int[TABLES];

    static long hash(byte[] path, int from, int to) {
        long hash = SEED ^ (to - from);
        int i = from;
        for (; i + Long.BYTES <= to; i += Long.BYTES) {
            hash = mixed(hash ^ (long) WORDS.get(path, i));
        }
        long rest = 0;
        for (; i < to; i++) {
            rest = rest << 8 | path[i] & 0xFF;
        }
        return mixed(hash ^ rest);
    }

    private static long mixed(long value) {
        return value * FACTOR ^ Math.multiplyHigh(value, FACTOR);
    }

    /** The position under this hash that the caller recognises, or -1. */
    int find(long hash, IntPredicate recognised) {
        int slot = slot(hash, recognised);
        return slot < 0 ? -1 : (int) tables[table(hash)][slot] - 1;
    }

    private int slot(long hash, IntPredicate recognised) {
        long[] table = tables[table(hash)];
        if (table == null) {
            return -1;
        }
        int tag = (int) (hash >>> 32);
        int mask = table.length - 1;
        for (int slot = tag & mask; table[slot] != 0; slot = slot + 1 & mask) {
            if ((int) (table[slot] >>> 32) == tag && recognised.test((int) table[slot] - 1)) {
                return slot;
            }
        }
        return -1;
    }

    void add(long hash, int position) {
        int number = table(hash);
        long[] table = tables[number];
        if (table == null) {
            table = new long[SMALLEST_TABLE];
        } else if (used[number] > table.length / 4 * 3) {
            table = grown(table);
        }
        tables[number] = table;
        put(table, hash >>> 32 << 32 | position + 1);
        used[number]++;
    }

    void replace(long hash, int position, int by) {
        int slot = slot(hash, found -> found == position);
        tables[table(hash)][slot] = hash >>> 32 << 32 | by + 1;
    }

    private static long[] grown(long[] table) {
        long[] grown = new long[table.length * 2];
        for (long entry : table) {
            if (entry != 0) {
                put(grown, entry);
            }
        }
        return grown;
    }

    private static void put(long[] table, long entry) {
        int mask = table.length - 1;
        int slot = (int) (entry >>> 32) & mask;
        while (table[slot] != 0) {
            slot = slot + 1 & mask;
        }
        table[slot] = entry;
    }

    private static int table(long hash) {
        return (int) hash & TABLES - 1;
    }
}

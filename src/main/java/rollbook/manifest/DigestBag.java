package rollbook.manifest;

import java.util.Arrays;

/** Digests of one length, kept without order and in little room. */
final class DigestBag {
    private final int digestBytes;
    private byte[] bytes = {};
    private int length;

    DigestBag(int digestBytes) {
        this.digestBytes = digestBytes;
    }

    void add(byte[] digest) {
        if (length == bytes.length) {
            bytes = Arrays.copyOf(bytes, Math.addExact(bytes.length, Math.max(4, size() / 2) * digestBytes));
        }
        System.arraycopy(digest, 0, bytes, length, digestBytes);
        length += digestBytes;
    }

    int size() {
        return length / digestBytes;
    }

    /** The digest of all digests in ascending order, one behind the other; equal ones stay. */
    byte[] combined(Digester digester) {
        sort();
        return digester.update(bytes, 0, length).digest();
    }

    /** Heapsort, which needs no room of its own. */
    private void sort() {
        byte[] moved = new byte[digestBytes];
        for (int top = size() / 2 - 1; top >= 0; top--) {
            sink(top, size(), moved);
        }
        for (int end = size() - 1; end > 0; end--) {
            swap(0, end, moved);
            sink(0, end, moved);
        }
    }

    private void sink(int from, int end, byte[] moved) {
        int top = from;
        for (int child = 2 * top + 1; child < end; child = 2 * top + 1) {
            int greater = child + 1 < end && compare(child, child + 1) < 0 ? child + 1 : child;
            if (compare(top, greater) >= 0) {
                return;
            }
            swap(top, greater, moved);
            top = greater;
        }
    }

    private int compare(int one, int other) {
        int a = one * digestBytes;
        int b = other * digestBytes;
        return Arrays.compareUnsigned(bytes, a, a + digestBytes, bytes, b, b + digestBytes);
    }

    private void swap(int one, int other, byte[] moved) {
        System.arraycopy(bytes, one * digestBytes, moved, 0, digestBytes);
        System.arraycopy(bytes, other * digestBytes, bytes, one * digestBytes, digestBytes);
        System.arraycopy(moved, 0, bytes, other * digestBytes, digestBytes);
    }
}

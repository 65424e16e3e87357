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
        byte[][] digests = new byte[size()][];
        for (int i = 0; i < digests.length; i++) {
            digests[i] = Arrays.copyOfRange(bytes, i * digestBytes, (i + 1) * digestBytes);
        }
        Arrays.sort(digests, Arrays::compareUnsigned);
        for (byte[] digest : digests) {
            digester.update(digest);
        }
        return digester.digest();
    }
}

package rollbook.manifest;

/**
 * A file in a zip archive, as its directory describes it.
 *
 * @param path checked: relative, separated by {@code /}, without {@code ..}
 * @param sizeBytes unpacked
 * @param headerAt where its local header begins
 */
record ZipEntry(String path, int flags, int method, long packedBytes, long sizeBytes, int crc32, long headerAt) {
    static final int STORED = 0;
    static final int DEFLATED = 8;

    /** Encrypted, strongly encrypted, or with a directory that hides its values. */
    private static final int ENCRYPTED = 1 | 1 << 6 | 1 << 13;

    boolean isEncrypted() {
        return (flags & ENCRYPTED) != 0;
    }

    boolean isFolder() {
        return path.endsWith("/");
    }
}

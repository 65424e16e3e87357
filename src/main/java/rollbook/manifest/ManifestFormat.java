package rollbook.manifest;

/** The form of a document, found from its content. */
public enum ManifestFormat {
    /** Digest first, then the name: as GNU tools write it. */
    GNU_LIST,
    /** Algorithm, name in brackets, then the digest: as BSD tools write it. */
    BSD_LIST,
    /** A table with a header and a row for each file, its cells separated by commas, semicolons or tabs. */
    TABLE,
    /** ASC MHL 1.0, whose documents carry the version number 2.0. */
    ASC_MHL,
    /** A manifest of a bag's payload (RFC 8493). */
    BAGIT,
    /** A zip archive of one or more {@code ascmhl} folders: hash lists and the chain that names them. */
    MHL_HISTORY,
    /** A zip archive of one bag, or of what describes it. */
    BAG,
    /** A zip archive of several things. */
    ARCHIVE;

    /** Whether the document holds others, and lists no file itself. */
    public boolean isArchive() {
        return this == MHL_HISTORY || this == BAG || this == ARCHIVE;
    }

    public String messageKey() {
        return "manifest.format." + name();
    }
}

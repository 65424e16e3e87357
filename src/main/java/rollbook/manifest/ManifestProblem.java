package rollbook.manifest;

/** Why a document is refused. The texts, and what to do about each, are in {@code messages/manifest.properties}. */
public enum ManifestProblem {
    NOTHING_LISTED,
    BINARY,
    CUT_OFF,
    UTF16,
    NOT_UTF8,
    LINE_TOO_LONG,
    CARRIAGE_RETURN,
    NOT_A_LIST_LINE,
    MIXED_LISTS,
    CRC_LIST,
    NOT_OF_BYTES,
    DIGEST_MALFORMED,
    DIGEST_LENGTH,
    ALGORITHM_UNSUPPORTED,
    ESCAPE_UNKNOWN,
    PATH_EMPTY,
    PATH_ABSOLUTE,
    PATH_PARENT,
    PATH_DRIVE,
    PATH_SEPARATORS,
    TABLE_COLUMN_TWICE,
    TABLE_CELLS,
    TABLE_QUOTES,
    TABLE_SIZE,
    TABLE_DIGEST,
    XML_MALFORMED,
    XML_ENCODING,
    XML_DECLARATIONS,
    XML_EXCESSIVE,
    MHL_NOT_A_HASH_LIST,
    MHL_OLD_FORMAT,
    MHL_VERSION,
    MHL_CHAIN_FILE,
    MHL_UNKNOWN_ELEMENT,
    MHL_MISSING_ELEMENT,
    MHL_VALUE,
    MHL_UNEXPECTED_TEXT,
    MHL_NO_DIGEST,
    MHL_TWO_DIGESTS,
    MHL_NOT_A_CHAIN,
    BAG_LINE,
    BAG_OUTSIDE,
    BAG_INSIDE,
    ZIP_DAMAGED,
    ZIP_FILE_DAMAGED,
    ZIP_SPLIT,
    ZIP_ENCRYPTED,
    ZIP_TWICE,
    ZIP_PATH,
    ZIP_NESTED,
    ZIP_METHOD,
    ZIP_RATIO,
    ZIP_TOO_LARGE,
    ZIP_TOO_MANY,
    ZIP_TOO_MANY_MANIFESTS,
    ZIP_NOTHING;

    /** Whether it is about an archive, which has no lines and columns. */
    public boolean ofArchive() {
        return name().startsWith("ZIP_");
    }

    public String messageKey() {
        return "manifest.problem." + name();
    }

    /** What the sender can do. */
    public String adviceKey() {
        return "manifest.advice." + name();
    }
}

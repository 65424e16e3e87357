package rollbook.manifest;

/**
 * Something in a document that departs from its standard and still leaves it readable: a person should know.
 *
 * @param count how often it was met
 * @param line of the first, 1-based
 * @param example the first
 */
public record ManifestRemark(Kind kind, long count, long line, String example) {

    /** The texts are in {@code messages/manifest.properties}. */
    public enum Kind {
        /** A file is listed though the document's own patterns leave it out (ASC MHL 1.0, 5.6.1.2). */
        RECORD_IGNORED,
        /** A file's digest doesn't say how it came about (6.5.1). */
        ACTION_MISSING,
        /** XXH32, which one published schema lets through: too short to prove anything. */
        TOO_SHORT,
        /** A date can't be read and is left out. */
        DATE_UNREADABLE,
        /** Content and structure of a directory have different algorithms (6.5.2). */
        DIRECTORY_SETS_DIFFER;

        public String messageKey() {
            return "manifest.remark." + name();
        }
    }
}

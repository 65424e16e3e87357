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
    ASC_MHL;

    public String messageKey() {
        return "manifest.format." + name();
    }
}

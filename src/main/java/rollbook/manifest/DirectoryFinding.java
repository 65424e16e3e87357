package rollbook.manifest;

/**
 * What recomputing a listed directory hash gave, for one algorithm.
 *
 * @param path of the directory; empty for the covered folder itself
 * @param line where the document lists it, 1-based
 */
public record DirectoryFinding(String path, ChecksumAlgorithm algorithm, State state, long line) {

    /** None of these says that a file is damaged: files have digests of their own. */
    public enum State {
        EQUAL,
        /** Other digests than the files' own, or the document doesn't list all files of the directory. */
        CONTENT_DIFFERS,
        /** The content agrees, the names don't: renamed files, or the rule that writers followed before 1.0. */
        STRUCTURE_DIFFERS,
        /** A file or directory below has no digest of this algorithm, or there is absurdly much. */
        NOT_COMPUTABLE,
        /** The document lists nothing in the directory (it is empty or has a history of its own): taken as it is. */
        GIVEN;

        public String messageKey() {
            return "manifest.directory." + name();
        }
    }
}

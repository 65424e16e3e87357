package rollbook.manifest;

/**
 * Where the evidence for a copy comes from.
 *
 * @param documentSha256 the document's identity, lower-case hexadecimal
 * @param speaksForCard the same document was also sent as the manifest of the card
 * @param speaksForAnotherCopy the same document was also sent for another copy of the same rendition and roll; that it
 *     covers other rolls on the same medium doesn't count
 */
public record EvidenceFacts(
        String documentSha256, boolean speaksForCard, boolean speaksForAnotherCopy, ManifestHeader.Process process) {

    /** Evidence from a document sent for this copy alone. */
    public static EvidenceFacts of(String documentSha256, ManifestHeader.Process process) {
        return new EvidenceFacts(documentSha256, false, false, process);
    }
}

package rollbook.manifest;

/**
 * Where the reference of a rendition comes from.
 *
 * @param documentSha256 the document's identity, lower-case hexadecimal
 */
public record ReferenceFacts(Origin origin, String documentSha256, RoundTrip roundTrip) {

    /** What the reference manifest was made from. */
    public enum Origin {
        /** The card itself. */
        CARD,
        /** The encoder's output, for a rendition that shares no bytes with the card. */
        ENCODING,
        /** Another copy, because there is none from the card. */
        COPY,
        /** Another encoded copy, because there is none from the encoder. */
        ENCODED_COPY
    }

    /** Whether the encoding of this rendition was itself proven by decoding it again. */
    public enum RoundTrip {
        /** The rendition is as recorded. */
        NOT_NEEDED,
        /** A manifest of the decoded files equals the card's. */
        PROVEN,
        /** No such manifest, or none that is proven equal. */
        ABSENT
    }

    /** The reference of files as recorded. */
    public static ReferenceFacts asRecorded(Origin origin, String documentSha256) {
        return new ReferenceFacts(origin, documentSha256, RoundTrip.NOT_NEEDED);
    }
}

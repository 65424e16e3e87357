package rollbook.manifest;

import rollbook.manifest.ArchiveFinding.Weight;

/** What can be said of a bag: what it lacks, what is wrong in it, what should be known of it (RFC 8493, section 3). */
public enum BagFinding {
    DECLARATION_MISSING(Weight.INCOMPLETE),
    DECLARATION_MALFORMED(Weight.INCOMPLETE),
    VERSION_UNKNOWN(Weight.REMARK),
    ENCODING_UNREADABLE(Weight.REMARK),
    NO_MANIFEST(Weight.INCOMPLETE),
    MANIFEST_UNREADABLE(Weight.INCOMPLETE),
    MANIFEST_NOT_IN_TAGS(Weight.INCOMPLETE),
    NOT_IN_EVERY_MANIFEST(Weight.INCOMPLETE),
    LISTED_TWICE(Weight.INCOMPLETE),
    PAYLOAD_MISSING(Weight.INCOMPLETE),
    PAYLOAD_UNLISTED(Weight.INCOMPLETE),
    PAYLOAD_ELSEWHERE(Weight.REMARK),
    TAG_FILE_MISSING(Weight.INCOMPLETE),
    TAG_FILE_DIFFERS(Weight.WRONG),
    TAG_FILES_VALID(Weight.REMARK),
    NO_TAG_MANIFEST(Weight.REMARK),
    ALGORITHM_UNKNOWN(Weight.REMARK),
    INFO_MALFORMED(Weight.INCOMPLETE),
    INFO_LINE(Weight.REMARK),
    SIZE_MALFORMED(Weight.INCOMPLETE),
    SIZE_REPEATED(Weight.INCOMPLETE),
    SIZE_DIFFERS(Weight.INCOMPLETE),
    FETCH(Weight.REMARK),
    FETCH_MALFORMED(Weight.INCOMPLETE),
    FETCH_UNLISTED(Weight.INCOMPLETE),
    ASTERISK(Weight.REMARK),
    PERCENT_NOT_CODED(Weight.REMARK);

    private final Weight weight;

    BagFinding(Weight weight) {
        this.weight = weight;
    }

    public Weight weight() {
        return weight;
    }

    public String messageKey() {
        return "manifest.bag." + name();
    }
}

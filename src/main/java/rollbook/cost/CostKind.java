package rollbook.cost;

import rollbook.production.MediaKind;

/** What is paid for: a kind of media, or bringing it. */
enum CostKind {
    CARD,
    READER,
    ADAPTER,
    DRIVE,
    ARRAY,
    TAPE,
    DELIVERY;

    static CostKind of(MediaKind kind) {
        return valueOf(kind.name());
    }
}

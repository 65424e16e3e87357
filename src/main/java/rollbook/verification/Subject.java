package rollbook.verification;

/** What a part of a document describes. */
enum Subject {
    /** The card itself: the reference of its roll. */
    CARD,
    /** A copy of a roll on a medium. */
    COPY,
    /** Files that belong to no roll. */
    NOT_A_ROLL
}

package rollbook.verification;

/** What a part of a document describes. */
enum Subject {
    /** The card itself: the reference of its roll as recorded. */
    CARD,
    /** A copy of a roll on a medium. */
    COPY,
    /** What the encoder put out: the reference of a roll's encoded copies. */
    ENCODED_OUTPUT,
    /** Files decoded from that again: equal to the card's, they prove the encoding. */
    DECODED,
    /** Files that belong to no roll. */
    NOT_A_ROLL
}

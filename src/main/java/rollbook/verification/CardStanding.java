package rollbook.verification;

/** Where a roll's card stands, in the order of what a person should look at first. */
public enum CardStanding {
    /** Copied, and a copy is known to be bad. */
    BAD_COPY,
    /** Copied, and not all is proven that must be. */
    HELD,
    /** Nothing holds the card; somebody may clear it. */
    READY,
    EXPOSED,
    COPYING,
    IN_CAMERA,
    CLEARED,
    /** The card was erased, or holds another roll by now. */
    OFF_CARD
}

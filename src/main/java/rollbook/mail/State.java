package rollbook.mail;

/** Where a message stands. */
enum State {
    WAITING,
    /** From before the talk with the mail server until after it. */
    SENDING,
    /** The mail server has taken it over. */
    SENT,
    /** Something was cut off while it was sent: the mail server may have it, and is not asked again by itself. */
    UNCERTAIN,
    /** The mail server doesn't want it. */
    FAILED,
    /** It waited for so long that it is of no use any more. */
    EXPIRED,
    /** Nobody is to get it any more. */
    WITHDRAWN;

    /** Whether a person may have it sent (once more). */
    boolean mayGoAgain() {
        return this == UNCERTAIN || this == FAILED || this == EXPIRED || this == WITHDRAWN;
    }
}

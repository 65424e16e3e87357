package rollbook.forecast;

/** Whether a pool needs an order. */
public enum OrderFlag {
    /** The pool lasts to the end of the show, as surely as the production wants it. */
    NONE,
    /** An order placed by the advised day comes in time. */
    ORDER_BY,
    /** Even an order placed today carries more risk than is put up with. */
    LATE,
    /** The pool may run out before anything ordered today could come, and has enough afterwards. */
    NO_HELP,
    /** The pool may run out, and how more can be had isn't known. */
    NO_SUPPLY
}

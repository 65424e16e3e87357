package rollbook.forecast;

/** Whether a pool needs an order. */
public enum OrderFlag {
    /** The pool lasts to the end of the show. */
    NONE,
    /** An order placed by the proposal's date comes in time. */
    ORDER_BY,
    /** That date is past: an order placed now comes later than it should. */
    LATE,
    /** The pool runs out, and how more can be had isn't known. */
    NO_SUPPLY
}

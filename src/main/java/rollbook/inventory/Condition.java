package rollbook.inventory;

/** Whether an item can be relied on and is with the production. */
public enum Condition {
    GOOD,
    /** Doubted: not to be used, and no copy on it counts, until somebody releases it. */
    QUARANTINED,
    /** Out of use for good. */
    RETIRED,
    /** Back with the supplier that it was hired from. */
    RETURNED,
    LOST
}

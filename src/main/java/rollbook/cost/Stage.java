package rollbook.cost;

/** How certain a cost is. */
enum Stage {
    /** For what has come, or for the weeks of a hire that have begun; whether the invoice is paid or not. */
    SPENT,
    /** Owed once it comes, or for the weeks of a hire that are agreed and haven't begun. */
    COMMITTED,
    /** Not ordered; the forecast says that it will have to be. */
    TO_COME
}

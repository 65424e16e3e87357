package rollbook.supplier;

/** Where a supplier's deliveries go. A delivery to the set takes a working day more: the unit moves, the office doesn't. */
public enum DeliveredTo {
    OFFICE(0),
    SET(1);

    private final int furtherWorkingDays;

    DeliveredTo(int furtherWorkingDays) {
        this.furtherWorkingDays = furtherWorkingDays;
    }

    /** Working days that the way adds to the supplier's lead time. Common practice, no source. */
    public int furtherWorkingDays() {
        return furtherWorkingDays;
    }
}

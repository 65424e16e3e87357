package rollbook.forecast;

/** Where a supplier's deliveries go. A delivery to the set takes a working day more: the unit moves, the office doesn't. */
public enum DeliveredTo {
    OFFICE(0),
    SET(1);

    /** Common practice, no source. */
    final int furtherWorkingDays;

    DeliveredTo(int furtherWorkingDays) {
        this.furtherWorkingDays = furtherWorkingDays;
    }
}

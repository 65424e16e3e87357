package rollbook.schedule;

/** Where a shooting day stands. */
public enum DayState {
    PLANNED,
    SHOOTING,
    WRAPPED,
    CANCELLED;

    /** Whether the date, note and minutes of such a day may be changed: a wrapped day is what later days are measured by. */
    public boolean open() {
        return this == PLANNED || this == SHOOTING;
    }
}

package rollbook.schedule;

public enum DayState {
    PLANNED,
    SHOOTING,
    WRAPPED,
    CANCELLED
}

package rollbook.burndown;

import java.time.LocalDate;

/** Names a shooting day: the unit, its number in that unit, and the date it is planned for or was shot on. */
public record DayRef(String unit, int number, LocalDate date) {}

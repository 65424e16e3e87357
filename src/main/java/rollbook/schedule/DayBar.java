package rollbook.schedule;

import rollbook.picture.Coordinates;
import rollbook.schedule.DayOutlooks.Expected;

/**
 * One day as a bar that lies: lengths as percentages of the longest thing in it. The plan is an outline, what was recorded
 * fills it from the left, what is still expected goes on from there.
 */
record DayBar(String planned, String recorded, String expected) {
    static DayBar of(UnitBars.Day day) {
        Expected outlook = day.isToCome() ? day.expected() : null;
        long expected = outlook == null ? 0 : Math.max(0, outlook.medianBytes() - day.recorded());
        double longest = Math.max(1, Math.max(day.planned(), day.recorded() + expected));
        return new DayBar(
                Coordinates.percent(day.planned() / longest),
                Coordinates.percent(day.recorded() / longest),
                Coordinates.percent(expected / longest));
    }
}

package rollbook.turnaround;

/**
 * How a camera works: a set-up, a take, a set-up, a take. Both stand still in breaks.
 *
 * @param take recorded time of a take
 * @param gap set-up before a take
 */
public record Takes(Delay take, Delay gap) {
    private static final double MINUTES_PER_HOUR = 60;
    private static final double MILLIS_PER_MINUTE = 60_000;

    public Takes {
        Invalid.unless(take.meanMillis() > 0, "take", "must be longer than nothing");
    }

    /** Takes of that length, with such set-ups between them that so many minutes of an hour are recorded. */
    public static Takes of(double recordedMinutesPerHour, double takeMinutes, Spread spread) {
        Invalid.unless(
                recordedMinutesPerHour > 0 && recordedMinutesPerHour <= MINUTES_PER_HOUR,
                "recordedMinutesPerHour",
                "must be above 0 and at most 60");
        double takeMillis = takeMinutes * MILLIS_PER_MINUTE;
        double gapMillis = takeMillis * (MINUTES_PER_HOUR / recordedMinutesPerHour - 1);
        return new Takes(new Delay(Math.round(takeMillis), spread), new Delay(Math.round(gapMillis), spread));
    }
}

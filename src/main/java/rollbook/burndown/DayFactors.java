package rollbook.burndown;

/** How much more or less than planned each day brings, on each course of the show. */
interface DayFactors {
    /** Recorded / planned bytes of a unit's day, one a replicate; the array isn't changed. */
    double[] factors(String unit, int dayNumber);
}

package rollbook.learning;

/**
 * How a unit's level moves on while it shoots: a random walk. It takes one step every few days instead of a small one
 * each day, which costs less and comes to the same over a week.
 *
 * @param perDay variance added a shooting day, as a part of the variance of a day about its level
 */
public record Wander(double perDay) {
    private static final int DAYS_PER_STEP = 5;

    /** Standard deviation of a step, in standard deviations of a day about its level. */
    double step() {
        return Math.sqrt(perDay * DAYS_PER_STEP);
    }

    /** Steps taken by the n-th day to come: half way through the first five it has taken one. */
    static int stepsBy(int daysAhead) {
        return Math.max(0, (daysAhead + DAYS_PER_STEP / 2) / DAYS_PER_STEP);
    }

    /** What it adds to the variance of the mean of the next so many days, as a part of the variance of a day. */
    double partOfMean(int days) {
        double squares = 0;
        for (int step = 1; step <= stepsBy(days); step++) {
            int moved = 0;
            for (int day = 1; day <= days; day++) {
                moved += stepsBy(day) >= step ? 1 : 0;
            }
            squares += (double) moved * moved;
        }
        return squares / days / days * DAYS_PER_STEP * perDay;
    }
}

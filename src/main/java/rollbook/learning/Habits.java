package rollbook.learning;

/**
 * How a production learns.
 *
 * @param prior what is believed before any day is shot
 * @param halfLifeDays after so many shooting days of its unit a day teaches half as much; at least 1, infinite for never
 * @param zeroDays whether days to come may bring nothing at all, as often as days did so far
 */
public record Habits(Belief prior, double halfLifeDays, boolean zeroDays) {
    /**
     * Before anything is known, eight of ten days lie between 0.63 and 1.60 times their plan. The level is worth two
     * days, so a few days move it, and wanders so fast that five days later a day teaches half as much. Common sense
     * tried on generated shows (docs/maths.md), no source.
     */
    public static final Habits USUAL = new Habits(new Belief(2, 0, 2, 0.125), 5, false);

    public Habits {
        if (!(halfLifeDays >= 1)) {
            throw new IllegalArgumentException("A half-life of %s days".formatted(halfLifeDays));
        }
    }

    double weight(int ageDays) {
        return Math.pow(2, -ageDays / halfLifeDays);
    }

    /**
     * How the level moves on. If old days teach less, then because it has moved since: weights that fall to the part δ
     * each day are the best ones for a level that walks at random with (1 − δ)² / δ of a day’s variance a day (Muth
     * 1960, from memory).
     */
    Wander wander() {
        double kept = weight(1);
        return new Wander((1 - kept) * (1 - kept) / kept);
    }
}

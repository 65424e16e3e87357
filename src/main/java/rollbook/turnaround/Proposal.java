package rollbook.turnaround;

/**
 * A change and what it costs, in the currency’s smallest unit.
 *
 * @param onceMinorUnits when it is bought
 * @param weeklyMinorUnits while it is hired
 */
public record Proposal(Change change, long onceMinorUnits, long weeklyMinorUnits) {
    public Proposal {
        Invalid.unless(onceMinorUnits >= 0, "onceMinorUnits", "must not be negative");
        Invalid.unless(weeklyMinorUnits >= 0, "weeklyMinorUnits", "must not be negative");
    }

    /** @throws ArithmeticException if that is more than a long holds */
    public long costMinorUnits(int weeks) {
        return Math.addExact(onceMinorUnits, Math.multiplyExact(weeklyMinorUnits, weeks));
    }
}

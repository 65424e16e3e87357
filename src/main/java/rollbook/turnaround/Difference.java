package rollbook.turnaround;

/**
 * How much more one plan takes than another on the same luck; below zero where it is better.
 *
 * @param waitingMinutes of all cameras together
 * @param lastProvenMinutes the last card is proven so much later
 * @param overtimeMinutes after wrap
 */
public record Difference(Estimate waitingMinutes, Estimate lastProvenMinutes, Estimate overtimeMinutes) {

    /** Neither waiting nor the last card tells one plan from the other. */
    public boolean mayBeNothing() {
        return waitingMinutes.mayBeNothing() && lastProvenMinutes.mayBeNothing();
    }

    /** Surely less waiting, or an earlier last card and not more waiting. */
    public boolean helps() {
        return waitingMinutes.isLess() || lastProvenMinutes.isLess() && waitingMinutes.mayBeNothing();
    }
}

package rollbook.turnaround;

/**
 * When a card leaves the camera. Always when it is full, in mid-take if need be, and at wrap.
 *
 * @param fillLevel part of the card; pulled after the take that reached it. Zero: after every take
 * @param atBreaks also when a break begins, if anything is on it
 */
public record PullRule(double fillLevel, boolean atBreaks) {
    public static final PullRule WHEN_FULL = new PullRule(1, false);

    public PullRule {
        Invalid.unless(fillLevel >= 0 && fillLevel <= 1, "fillLevel", "must be at least 0 and at most 1");
    }
}

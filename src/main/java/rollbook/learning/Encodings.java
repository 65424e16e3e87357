package rollbook.learning;

import java.util.List;

/** What an encoding without loss keeps of the bytes recorded, learned roll by roll: ln(kept / recorded). */
public final class Encodings {
    /**
     * How sure the planned share is before any roll is encoded: worth one roll, and a roll is about 5 % off. Pictures
     * of one show are much alike. Common sense, no source.
     */
    private static final double ROLLS = 1;

    private static final double A = 2;
    private static final double B = 0.005;

    private Encodings() {}

    /** One roll. */
    public record Roll(long recordedBytes, long keptBytes) {}

    /** Before any roll. */
    public static Belief prior(double plannedShare) {
        return new Belief(ROLLS, Math.log(plannedShare), A, B);
    }

    /**
     * @param plannedShare what the copy plan says, above 0; 1 keeps all
     * @param rolls those with both figures; one with nothing in either teaches nothing
     */
    public static Belief from(double plannedShare, List<Roll> rolls) {
        return prior(plannedShare)
                .updated(rolls.stream()
                        .filter(roll -> roll.recordedBytes > 0 && roll.keptBytes > 0)
                        .mapToDouble(roll -> Math.log((double) roll.keptBytes / roll.recordedBytes))
                        .toArray());
    }
}

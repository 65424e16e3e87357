package rollbook.forecast;

import java.util.List;
import rollbook.offload.Encoding;
import rollbook.quantity.Share;

/**
 * What an encoding leaves of the bytes recorded: as measured once enough rolls tell, until then as the copy plan says.
 *
 * @param keptBytes of the measured rolls together, so that a large roll weighs more than a small one
 * @param recordedBytes of the same rolls
 * @param rolls how many were measured
 * @param plannedPercent what the copy plan says
 */
record Reduction(long keptBytes, long recordedBytes, int rolls, int plannedPercent) {
    /** Fewer may be a test shoot or one kind of picture; common practice, no source. */
    static final int ROLLS_NEEDED = 5;

    /** As recorded. */
    static final Reduction NONE = new Reduction(0, 0, 0, 100);

    static Reduction of(List<Encoding> encodings, int plannedPercent) {
        return new Reduction(
                encodings.stream().mapToLong(Encoding::encodedBytes).reduce(0, Math::addExact),
                encodings.stream().mapToLong(Encoding::recordedBytes).reduce(0, Math::addExact),
                encodings.size(),
                plannedPercent);
    }

    boolean isMeasured() {
        return rolls >= ROLLS_NEEDED;
    }

    Share planned() {
        return Share.percent(plannedPercent);
    }

    Share share() {
        return isMeasured() ? new Share(keptBytes, recordedBytes) : planned();
    }
}

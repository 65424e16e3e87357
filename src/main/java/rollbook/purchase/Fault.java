package rollbook.purchase;

import java.util.List;

/**
 * Items that came and aren't what was ordered.
 *
 * @param words what is wrong with them
 */
public record Fault(Kind kind, int items, String words, Remedy remedy) {
    /** What is wrong. */
    public enum Kind {
        DAMAGED,
        /** Something else was sent than was ordered. */
        WRONG
    }

    /** What the supplier does about it. */
    public enum Remedy {
        /** Others come instead, so they are still expected. */
        REPLACED,
        /** They aren't paid for, and none comes instead. */
        CREDITED
    }

    /** Of all of them together. */
    static int items(List<Fault> faults) {
        return faults.stream().mapToInt(Fault::items).sum();
    }

    /** Of those together that the supplier credits. */
    static int credited(List<Fault> faults) {
        return faults.stream()
                .filter(fault -> fault.remedy == Remedy.CREDITED)
                .mapToInt(Fault::items)
                .sum();
    }
}

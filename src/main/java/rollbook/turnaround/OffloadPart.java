package rollbook.turnaround;

import org.jspecify.annotations.Nullable;

/** Something on the way of an offload whose speed can be learned. */
public sealed interface OffloadPart {

    /**
     * A kind of card read by a reader, through an adapter or directly.
     *
     * @param reader its code
     * @param adapter its code, or null if the card goes straight into the reader
     * @param cardType a name for cards that are equally fast
     */
    record CardWay(String reader, @Nullable String adapter, String cardType) implements OffloadPart {}

    /**
     * Media that are equally fast to write. Drives fill up and are changed; what was learned with one holds for the
     * next of its kind. Bytes are counted as they come from the card, also where an encoder leaves fewer to write.
     */
    record WrittenKind(String name) implements OffloadPart, Comparable<WrittenKind> {
        @Override
        public int compareTo(WrittenKind other) {
            return name.compareTo(other.name);
        }
    }
}

package rollbook.recording;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import rollbook.quantity.ByteCount;
import rollbook.quantity.Fraction;

/** How many drives or tapes an amount of data asks for. */
public final class MediaNeeded {

    private MediaNeeded() {}

    /**
     * Items for data that may be cut anywhere, each filled up to a share of its capacity.
     *
     * @param fillShare above 0 and at most 1; 0.95 leaves a twentieth of each item empty
     */
    public static long forBytes(ByteCount total, ByteCount capacity, Fraction fillShare) {
        if (capacity.isZero() || fillShare.isZero() || fillShare.compareTo(Fraction.ONE) > 0) {
            throw new IllegalArgumentException("capacity and fill share must leave room");
        }
        return total.exact()
                .dividedBy(capacity.exact().times(fillShare))
                .ceiling()
                .longValueExact();
    }

    /**
     * Items for rolls that each stay whole on one item, the largest placed first and each on the first item with room. Bytes
     * divided by capacity would ask for too few: three rolls of 7 TB need three tapes of 12 TB, not two.
     *
     * @throws IllegalArgumentException if a roll is larger than an item
     */
    public static int forWholeRolls(List<ByteCount> rolls, ByteCount capacity) {
        List<ByteCount> room = new ArrayList<>();
        for (ByteCount roll : rolls.stream().sorted(Comparator.reverseOrder()).toList()) {
            if (roll.isMoreThan(capacity)) {
                throw new IllegalArgumentException("a roll of " + roll.bytes() + " bytes fits on no item");
            }
            place(roll, capacity, room);
        }
        return room.size();
    }

    private static void place(ByteCount roll, ByteCount capacity, List<ByteCount> room) {
        for (int i = 0; i < room.size(); i++) {
            if (room.get(i).isAtLeast(roll)) {
                room.set(i, room.get(i).minus(roll));
                return;
            }
        }
        room.add(capacity.minus(roll));
    }
}

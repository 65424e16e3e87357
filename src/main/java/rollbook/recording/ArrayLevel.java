package rollbook.recording;

import rollbook.quantity.ByteCount;

/** How the disks of an array share what is written, and so how much of them is usable before a file system. */
public enum ArrayLevel {
    /** RAID 0: no spare; one lost disk loses all. */
    STRIPED(1),
    /** RAID 1 or 10: every byte twice. */
    MIRRORED(2),
    /** RAID 5: survives the loss of one disk. */
    SINGLE_PARITY(3),
    /** RAID 6: survives the loss of two disks. */
    DOUBLE_PARITY(4);

    private final int fewestDisks;

    ArrayLevel(int fewestDisks) {
        this.fewestDisks = fewestDisks;
    }

    public int fewestDisks() {
        return fewestDisks;
    }

    /** @throws IllegalArgumentException if the level cannot be made of that many disks */
    public ByteCount usable(int disks, ByteCount diskCapacity) {
        if (disks < fewestDisks || (this == MIRRORED && disks % 2 != 0)) {
            throw new IllegalArgumentException(this + " cannot be made of " + disks + " disks");
        }
        return diskCapacity.times(
                switch (this) {
                    case STRIPED -> disks;
                    case MIRRORED -> disks / 2;
                    case SINGLE_PARITY -> disks - 1;
                    case DOUBLE_PARITY -> disks - 2;
                });
    }
}

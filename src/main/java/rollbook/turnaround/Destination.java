package rollbook.turnaround;

import rollbook.quantity.DataRate;

/**
 * What copies are written to. Offloads that use it at the same time share its time.
 *
 * @param write bytes it takes in a second
 * @param read bytes it gives in a second
 * @param encoded the copy passes the station’s encoder
 * @param keptShare bytes written for each recorded byte; 1 unless encoded
 */
public record Destination(String name, DataRate write, DataRate read, boolean encoded, double keptShare) {
    public Destination {
        Invalid.ifBlank(name, "name");
        Invalid.unless(!write.isZero(), "write", "must be above zero");
        Invalid.unless(!read.isZero(), "read", "must be above zero");
        Invalid.unless(keptShare > 0 && Double.isFinite(keptShare), "keptShare", "must be above zero");
        Invalid.unless(encoded || keptShare == 1, "keptShare", "must be 1 unless encoded");
    }

    /** Takes the recorded bytes as they are. */
    public static Destination asRecorded(String name, DataRate write, DataRate read) {
        return new Destination(name, write, read, false, 1);
    }
}

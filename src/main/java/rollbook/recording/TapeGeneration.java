package rollbook.recording;

import rollbook.quantity.ByteCount;
import rollbook.quantity.ByteUnit;
import rollbook.quantity.DataRate;
import rollbook.quantity.Fraction;

/**
 * Generations of the open linear tape format, as published: native capacity and rate of one cartridge.
 *
 * <p>The larger figures printed on a cartridge assume that data shrinks 2.5 times. Camera files hardly shrink: plan with the
 * native ones.
 */
public enum TapeGeneration {
    LTO_6(2_500, 160),
    LTO_7(6_000, 300),
    LTO_8(12_000, 360),
    LTO_9(18_000, 400),
    LTO_10_30TB(30_000, 400),
    LTO_10_40TB(40_000, 400);

    private static final Fraction PRINTED_COMPRESSION = Fraction.of(5, 2);

    private final ByteCount nativeCapacity;
    private final DataRate nativeRate;

    TapeGeneration(long gigabytes, long megabytesPerSecond) {
        this.nativeCapacity = ByteCount.of(gigabytes, ByteUnit.GB);
        this.nativeRate = DataRate.ofBytesPerSecond(megabytesPerSecond * ByteUnit.MB.bytes());
    }

    public ByteCount nativeCapacity() {
        return nativeCapacity;
    }

    public DataRate nativeRate() {
        return nativeRate;
    }

    /** What the cartridge's print promises, to recognise it and not to plan with. */
    public ByteCount printedCapacity() {
        return nativeCapacity.times(PRINTED_COMPRESSION);
    }

    public DataRate printedRate() {
        return nativeRate.times(PRINTED_COMPRESSION);
    }

    /** Exact seconds to write a whole cartridge without a stop. */
    public Fraction secondsToFill() {
        return nativeRate.secondsFor(nativeCapacity);
    }
}

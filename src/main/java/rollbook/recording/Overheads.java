package rollbook.recording;

import rollbook.quantity.Fraction;

/**
 * What a file carries beside picture and sound.
 *
 * @param bytesPerFrame headers, padding and metadata of each frame, in bytes
 * @param container what the file structure adds to picture and sound, as a share of them: 0.005 for half a per cent; below 1
 */
public record Overheads(long bytesPerFrame, Fraction container) {

    public static final Overheads NONE = new Overheads(0, Fraction.ZERO);

    public Overheads {
        InvalidFormat.requireWithin("frameOverhead", bytesPerFrame, 0, 1_000_000_000L);
        if (container.compareTo(Fraction.ONE) >= 0) {
            throw new InvalidFormat("containerOverhead", "recording.invalid.container-overhead");
        }
    }

    public static Overheads ofFrame(long bytesPerFrame) {
        return new Overheads(bytesPerFrame, Fraction.ZERO);
    }

    /** The factor that the container puts on picture and sound together. */
    Fraction factor() {
        return Fraction.ONE.plus(container);
    }
}

package rollbook.recording;

import rollbook.quantity.DataRate;
import rollbook.quantity.Fraction;

/**
 * Linear PCM sound beside a picture or alone.
 *
 * @param channels 0 to 256; none means a mute recording
 * @param bitsPerSample 8, 16, 24 or 32; a sample takes whole bytes
 */
public record Audio(int channels, int samplesPerSecond, int bitsPerSample) {

    public static final Audio NONE = new Audio(0, 48_000, 24);

    public Audio {
        InvalidFormat.requireWithin("audioChannels", channels, 0, 256);
        InvalidFormat.requireWithin("audioSampleRate", samplesPerSecond, 1, 10_000_000);
        InvalidFormat.requireWithin("audioBits", bitsPerSample, 8, 32);
        if (bitsPerSample % 8 != 0) {
            throw new InvalidFormat("audioBits", "recording.invalid.audio-bits");
        }
    }

    public DataRate rate() {
        return DataRate.ofBytesPerSecond((long) channels * samplesPerSecond * (bitsPerSample / 8));
    }

    /** Samples of one channel in one frame, exact: 1601.6 on average at 30000/1001. */
    public Fraction samplesPerFrame(FrameRate frameRate) {
        return Fraction.of(samplesPerSecond).dividedBy(frameRate.framesPerSecond());
    }
}

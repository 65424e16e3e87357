package rollbook.recording;

import java.math.BigInteger;
import java.time.Duration;
import rollbook.quantity.ByteCount;
import rollbook.quantity.DataRate;
import rollbook.quantity.Fraction;

/**
 * All that fixes how fast a recorder fills a card.
 *
 * <pre>
 *   bytes per second = ((coded frame + overhead per frame) × frames per second + sound) × (1 + container overhead)
 *
 *   4096 × 2160, 12 bit packed, 24 frames a second, mute:
 *   4096 × 12 / 8 = 6,144 bytes a row, × 2160 = 13,271,040 a frame, × 24 = 318,504,960 a second = 318.5 MB/s
 * </pre>
 *
 * Figures are exact; only {@link #bytesFor} rounds, and says how.
 */
public record RecordingFormat(
        String name, PictureSize size, FrameRate frameRate, Coding coding, Overheads overheads, Audio audio) {

    private static final int LONGEST_NAME = 100;
    private static final int SECONDS_PER_MINUTE = 60;
    private static final int SECONDS_PER_HOUR = 3600;

    public RecordingFormat {
        name = name.strip();
        if (name.isEmpty() || name.length() > LONGEST_NAME) {
            throw new InvalidFormat("name", "recording.invalid.name", LONGEST_NAME);
        }
        if (size.isNone() != (coding instanceof Coding.SoundOnly)) {
            throw new InvalidFormat("pictureWidth", "recording.invalid.picture");
        }
        if (size.isNone() && audio.channels() == 0) {
            throw new InvalidFormat("audioChannels", "recording.invalid.sound-channels");
        }
    }

    /** A format without picture; the frame rate only counts time code and does not change the bytes. */
    public static RecordingFormat sound(String name, FrameRate frameRate, Audio audio) {
        return new RecordingFormat(name, PictureSize.NONE, frameRate, new Coding.SoundOnly(), Overheads.NONE, audio);
    }

    /** The same format shot at another frame rate. */
    public RecordingFormat at(FrameRate otherRate) {
        return new RecordingFormat(name, size, otherRate, coding, overheads, audio);
    }

    public RecordingFormat with(Audio otherAudio) {
        return new RecordingFormat(name, size, frameRate, coding, overheads, otherAudio);
    }

    /** One stored picture with its own headers, without sound and container. */
    public Fraction pictureBytesPerFrame() {
        return coding.frameBytes(size).plus(Fraction.of(overheads.bytesPerFrame()));
    }

    public DataRate dataRate() {
        Fraction picture = pictureBytesPerFrame().times(frameRate.framesPerSecond());
        return new DataRate(picture).plus(audio.rate()).times(overheads.factor());
    }

    /** Everything that a frame adds to the card: picture, its share of sound, overheads. */
    public Fraction bytesPerFrame() {
        return bytesPerSecond().dividedBy(frameRate.framesPerSecond());
    }

    public Fraction bytesPerSecond() {
        return dataRate().bytesPerSecond();
    }

    public Fraction bytesPerMinute() {
        return bytesPerSecond().times(SECONDS_PER_MINUTE);
    }

    public Fraction bytesPerHour() {
        return bytesPerSecond().times(SECONDS_PER_HOUR);
    }

    /** Bytes of a recording of that length, a part of a byte counted as a whole one. */
    public ByteCount bytesFor(Duration recorded) {
        return dataRate().bytesIn(recorded);
    }

    /** Exact minutes that fit on a card of that capacity. */
    public Fraction minutesOn(ByteCount capacity) {
        return dataRate().secondsFor(capacity).dividedBy(SECONDS_PER_MINUTE);
    }

    /** Whole frames that fit on a card of that capacity. */
    public BigInteger framesOn(ByteCount capacity) {
        return capacity.exact().dividedBy(bytesPerFrame()).floor();
    }

    /**
     * Bits that one photosite or pixel takes after coding, a measure of how hard a coding squeezes.
     *
     * @throws ArithmeticException if there is no picture
     */
    public Fraction bitsPerPhotosite() {
        return coding.frameBytes(size).times(8).dividedBy(size.photosites());
    }
}

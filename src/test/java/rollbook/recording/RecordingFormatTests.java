package rollbook.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import rollbook.quantity.ByteCount;
import rollbook.quantity.ByteUnit;
import rollbook.quantity.Fraction;

class RecordingFormatTests {

    private static final PictureSize FOUR_K = new PictureSize(4096, 2160);
    private static final Coding TWELVE_BIT = new Coding.Bayer(12, Packing.PACKED);

    /** Worked by hand: 4096 × 12 / 8 × 2160 = 13,271,040 bytes a frame (RAW-03 of the check values). */
    @Test
    void addsUpPictureSoundAndOverheads() {
        RecordingFormat format = new RecordingFormat(
                "A camera",
                FOUR_K,
                FrameRate.of(24),
                TWELVE_BIT,
                new Overheads(1_000, Fraction.parse("0.005")),
                new Audio(2, 48_000, 24));
        assertThat(format.pictureBytesPerFrame()).isEqualTo(Fraction.of(13_272_040));
        Fraction perSecond = Fraction.of(13_272_040L * 24 + 2 * 48_000 * 3).times(Fraction.parse("1.005"));
        assertThat(format.bytesPerSecond()).isEqualTo(perSecond);
        assertThat(format.bytesPerFrame()).isEqualTo(perSecond.dividedBy(24));
        assertThat(format.bytesPerMinute()).isEqualTo(perSecond.times(60));
        assertThat(format.bytesPerHour()).isEqualTo(perSecond.times(3600));
    }

    @Test
    void anotherFrameRateChangesPictureAndNotSound() {
        RecordingFormat format = format(FrameRate.of(24)).with(new Audio(4, 48_000, 24));
        Fraction more = format.at(FrameRate.of(48)).bytesPerSecond().minus(format.bytesPerSecond());
        assertThat(more).isEqualTo(Fraction.of(24 * 13_271_040L));
        assertThat(format.at(FrameRate.of(48)).name()).isEqualTo(format.name());
    }

    @Test
    void soundRollsHaveNoPicture() {
        RecordingFormat sound = RecordingFormat.sound("Sound", FrameRate.of(25), new Audio(8, 48_000, 24));
        assertThat(sound.bytesPerSecond()).isEqualTo(Fraction.of(1_152_000));
        assertThat(sound.at(FrameRate.of(24)).bytesPerSecond()).isEqualTo(Fraction.of(1_152_000));
        assertThatThrownBy(sound::bitsPerPhotosite).isInstanceOf(ArithmeticException.class);
    }

    @Test
    void wholeFramesFitOnACard() {
        RecordingFormat format = format(FrameRate.of(24));
        ByteCount justUnderTwo = ByteCount.of(2 * 13_271_040L - 1);
        assertThat(format.framesOn(justUnderTwo)).isEqualTo(1);
        assertThat(format.framesOn(justUnderTwo.plus(ByteCount.of(1)))).isEqualTo(2);
    }

    @Test
    void minutesOnACardAreTheInverseOfBytes() {
        long seed = 24L;
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 500; i++) {
            RecordingFormat format = random(random);
            ByteCount capacity = ByteCount.of(1 + random.nextLong(8_000_000_000_000L));
            Fraction minutes = format.minutesOn(capacity);
            assertThat(minutes.times(format.bytesPerMinute()))
                    .as("seed %d", seed)
                    .isEqualTo(capacity.exact());
            assertThat(format.minutesOn(capacity.times(2))).as("seed %d", seed).isEqualTo(minutes.times(2));
        }
    }

    @Test
    void bytesGrowInStepWithTime() {
        long seed = 60L;
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 500; i++) {
            RecordingFormat format = random(random);
            Fraction seconds = Fraction.of(1 + random.nextInt(100_000), 1 + random.nextInt(100));
            Fraction once = format.dataRate().bytesIn(seconds);
            assertThat(format.dataRate().bytesIn(seconds.times(7)))
                    .as("seed %d", seed)
                    .isEqualTo(once.times(7));
            long minute = format.bytesFor(Duration.ofMinutes(1)).bytes();
            assertThat(Fraction.of(minute)).as("seed %d", seed).isGreaterThanOrEqualTo(format.bytesPerMinute());
            assertThat(Fraction.of(minute - 1)).as("seed %d", seed).isLessThan(format.bytesPerMinute());
        }
    }

    @Test
    void aShowTooLargeForBytesFailsInsteadOfWrappingAround() {
        RecordingFormat format = new RecordingFormat(
                "large",
                FOUR_K,
                FrameRate.of(100_000),
                new Coding.FixedFrameBytes(1_000_000_000_000L),
                Overheads.NONE,
                Audio.NONE);
        assertThat(format.bytesFor(Duration.ofSeconds(92))).isGreaterThan(ByteCount.of(9, ByteUnit.EB));
        assertThatThrownBy(() -> format.bytesFor(Duration.ofSeconds(93))).isInstanceOf(ArithmeticException.class);
    }

    private static RecordingFormat format(FrameRate rate) {
        return new RecordingFormat("A camera", FOUR_K, rate, TWELVE_BIT, Overheads.NONE, Audio.NONE);
    }

    private static RecordingFormat random(SplittableRandom random) {
        PictureSize size = new PictureSize(1 + random.nextInt(8192), 1 + random.nextInt(4320));
        Coding.Uncompressed plain = new Coding.Components(Sampling.S422, 1 + random.nextInt(16), Packing.PACKED);
        Coding coding = random.nextBoolean() ? plain : new Coding.CompressionRatio(plain, Fraction.of(7, 2));
        FrameRate rate = FrameRate.of((1 + random.nextInt(240)) * 1000L, random.nextBoolean() ? 1000 : 1001);
        Overheads overheads = new Overheads(random.nextInt(10_000), Fraction.of(random.nextInt(100), 1000));
        return new RecordingFormat("any", size, rate, coding, overheads, new Audio(random.nextInt(16), 48_000, 24));
    }
}

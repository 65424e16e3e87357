package rollbook.recording;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rollbook.quantity.Fraction;
import rollbook.recording.Coding.Bayer;
import rollbook.recording.Coding.Components;
import rollbook.recording.Coding.CompressionRatio;
import rollbook.recording.Coding.FixedFrameBytes;
import rollbook.recording.Coding.TargetBitRate;
import rollbook.recording.Coding.Uncompressed;

class CodingTests {

    private static final PictureSize HD = new PictureSize(1920, 1080);

    /** Octets and pixels of the pixel groups: SMPTE ST 2110-20:2022, tables 1 to 3. */
    @ParameterizedTest
    @CsvSource({
        "S444, 8, 3, 1", "S444, 10, 15, 4", "S444, 12, 9, 2", "S444, 16, 6, 1",
        "S422, 8, 4, 2", "S422, 10, 5, 2", "S422, 12, 6, 2", "S422, 16, 8, 2",
        "S420, 8, 6, 4", "S420, 10, 15, 8", "S420, 12, 9, 4"
    })
    void packedComponentsFillPixelGroups(Sampling sampling, int bits, long octets, long pixels) {
        Fraction frame = new Components(sampling, bits, Packing.PACKED).frameBytes(HD);
        assertThat(frame.dividedBy(HD.photosites())).isEqualTo(Fraction.of(octets, pixels));
    }

    /** 10-bit and 12-bit filling: SMPTE ST 268 packing method A, as in FFmpeg libavcodec/dpx.c. */
    @ParameterizedTest
    @CsvSource({"8, 3", "10, 4", "12, 6", "16, 6", "32, 12"})
    void paddedRgbTakesWholeWords(int bits, long bytesPerPixel) {
        Fraction frame = new Components(Sampling.S444, bits, Packing.PADDED).frameBytes(HD);
        assertThat(frame).isEqualTo(Fraction.of(HD.photosites() * bytesPerPixel));
    }

    @Test
    void eachRowStartsOnAByteOrAWord() {
        PictureSize odd = new PictureSize(4097, 2);
        assertThat(new Bayer(12, Packing.PACKED).frameBytes(odd)).isEqualTo(Fraction.of(2 * 6146));
        assertThat(new Bayer(12, Packing.PADDED).frameBytes(odd)).isEqualTo(Fraction.of(2 * 2 * 4097));
        // Two pixels of 4:2:2 share four components; a lone last pixel still needs its block: 4 × 10 bits are 5 bytes.
        assertThat(new Components(Sampling.S422, 10, Packing.PACKED).frameBytes(new PictureSize(1, 1)))
                .isEqualTo(Fraction.of(5));
        assertThat(new Components(Sampling.S422, 10, Packing.PADDED).frameBytes(new PictureSize(1, 1)))
                .isEqualTo(Fraction.of(8));
    }

    @Test
    void targetBitRateGrowsWithTheFrameRateInUse() {
        TargetBitRate coding = new TargetBitRate(200_000_000, FrameRate.of(25));
        assertThat(coding.frameBytes(HD)).isEqualTo(Fraction.of(1_000_000));
        RecordingFormat at50 =
                new RecordingFormat("high speed", HD, FrameRate.of(50), coding, Overheads.NONE, Audio.NONE);
        assertThat(at50.dataRate().megabitsPerSecond()).isEqualTo(Fraction.of(400));
    }

    @Test
    void packedIsNeverLargerThanPadded() {
        long seed = 2110L;
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 2000; i++) {
            PictureSize size = new PictureSize(1 + random.nextInt(9000), 1 + random.nextInt(5000));
            int bits = 1 + random.nextInt(32);
            Sampling sampling = Sampling.values()[random.nextInt(Sampling.values().length)];
            assertThat(new Components(sampling, bits, Packing.PACKED).frameBytes(size))
                    .as("seed %d, %s, %s, %d bit", seed, size, sampling, bits)
                    .isLessThanOrEqualTo(new Components(sampling, bits, Packing.PADDED).frameBytes(size));
            assertThat(new Bayer(bits, Packing.PACKED).frameBytes(size))
                    .as("seed %d, %s, %d bit", seed, size, bits)
                    .isLessThanOrEqualTo(new Bayer(bits, Packing.PADDED).frameBytes(size));
        }
    }

    @Test
    void moreCompressionOrFewerBitsNeverTakeMoreBytes() {
        long seed = 268L;
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 1000; i++) {
            PictureSize size = new PictureSize(1 + random.nextInt(9000), 1 + random.nextInt(5000));
            int bits = 2 + random.nextInt(31);
            Uncompressed plain = new Bayer(bits, Packing.PACKED);
            Fraction less = Fraction.ONE.plus(Fraction.of(random.nextInt(1000), 100));
            Fraction more = less.plus(Fraction.of(1, 100));
            assertThat(new CompressionRatio(plain, more).frameBytes(size))
                    .as("seed %d", seed)
                    .isLessThan(new CompressionRatio(plain, less).frameBytes(size));
            assertThat(new CompressionRatio(plain, less).frameBytes(size))
                    .as("seed %d", seed)
                    .isLessThanOrEqualTo(plain.frameBytes(size));
            assertThat(new Bayer(bits - 1, Packing.PACKED).frameBytes(size))
                    .as("seed %d", seed)
                    .isLessThanOrEqualTo(plain.frameBytes(size));
        }
    }

    @Test
    void theLargestPictureDoesNotOverflow() {
        PictureSize largest = new PictureSize(PictureSize.LARGEST, PictureSize.LARGEST);
        for (Coding coding :
                List.of(new Bayer(32, Packing.PADDED), new Components(Sampling.S444, 32, Packing.PADDED))) {
            assertThat(coding.frameBytes(largest)).isGreaterThanOrEqualTo(Fraction.of(40_000_000_000L));
        }
        assertThat(new FixedFrameBytes(7).frameBytes(largest)).isEqualTo(Fraction.of(7));
    }
}

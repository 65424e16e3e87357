package rollbook.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Properties;
import java.util.stream.Stream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import rollbook.quantity.Fraction;

class InvalidFormatTests {

    private static final PictureSize HD = new PictureSize(1920, 1080);
    private static final FrameRate R25 = FrameRate.of(25);
    private static final Coding FIXED = new Coding.FixedFrameBytes(1);
    private static final Coding.Uncompressed PLAIN = new Coding.Bayer(12, Packing.PACKED);

    @ParameterizedTest(name = "{0}")
    @MethodSource("mistakes")
    void namesTheFieldAndAMessageThatExists(String field, ThrowingCallable mistake) throws IOException {
        InvalidFormat error = catchThrowableOfType(InvalidFormat.class, mistake);
        assertThat(error.field()).isEqualTo(field);
        assertThat(messages()).containsKey(error.messageKey());
    }

    @Test
    void boundsThemselvesAreAllowed() {
        assertThat(new PictureSize(1, PictureSize.LARGEST).photosites()).isEqualTo(PictureSize.LARGEST);
        assertThat(new Coding.CompressionRatio(PLAIN, Fraction.ONE).frameBytes(HD))
                .isEqualTo(PLAIN.frameBytes(HD));
        assertThat(new Audio(256, 192_000, 32).rate().isZero()).isFalse();
        assertThat(format("x".repeat(100), HD, FIXED, Audio.NONE).name()).hasSize(100);
    }

    private static Stream<Arguments> mistakes() {
        return Stream.of(
                mistake("pictureWidth", () -> new PictureSize(0, 1080)),
                mistake("pictureHeight", () -> new PictureSize(1920, -1)),
                mistake("pictureWidth", () -> new PictureSize(100_001, 1)),
                mistake("frameRate", () -> FrameRate.parse("fast")),
                mistake("frameRate", () -> FrameRate.of(100_001)),
                mistake("bitsPerPhotosite", () -> new Coding.Bayer(0, Packing.PACKED)),
                mistake("bitsPerComponent", () -> new Coding.Components(Sampling.S422, 33, Packing.PADDED)),
                mistake("frameBytes", () -> new Coding.FixedFrameBytes(0)),
                mistake("bitRate", () -> new Coding.TargetBitRate(0, R25)),
                mistake("compressionRatio", () -> new Coding.CompressionRatio(PLAIN, Fraction.of(99, 100))),
                mistake("compressionRatio", () -> new Coding.CompressionRatio(PLAIN, Fraction.of(10_001))),
                mistake("frameOverhead", () -> Overheads.ofFrame(-1)),
                mistake("containerOverhead", () -> new Overheads(0, Fraction.ONE)),
                mistake("audioChannels", () -> new Audio(-1, 48_000, 24)),
                mistake("audioSampleRate", () -> new Audio(2, 0, 24)),
                mistake("audioBits", () -> new Audio(2, 48_000, 20)),
                mistake("audioBits", () -> new Audio(2, 48_000, 40)),
                mistake("name", () -> format("  ", HD, FIXED, Audio.NONE)),
                mistake("name", () -> format("x".repeat(101), HD, FIXED, Audio.NONE)),
                mistake("pictureWidth", () -> format("x", PictureSize.NONE, FIXED, Audio.NONE)),
                mistake("pictureWidth", () -> format("x", HD, new Coding.SoundOnly(), new Audio(1, 48_000, 24))),
                mistake("audioChannels", () -> RecordingFormat.sound("x", R25, Audio.NONE)));
    }

    private static Arguments mistake(String field, ThrowingCallable call) {
        return Arguments.of(field, call);
    }

    private static RecordingFormat format(String name, PictureSize size, Coding coding, Audio audio) {
        return new RecordingFormat(name, size, R25, coding, Overheads.NONE, audio);
    }

    private static Properties messages() throws IOException {
        Properties messages = new Properties();
        try (InputStream file = InvalidFormat.class.getResourceAsStream("/messages/recording.properties")) {
            messages.load(new InputStreamReader(file, StandardCharsets.UTF_8));
        }
        return messages;
    }
}

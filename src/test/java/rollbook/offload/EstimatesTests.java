package rollbook.offload;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rollbook.recording.Audio;
import rollbook.recording.Coding;
import rollbook.recording.FrameRate;
import rollbook.recording.OffloadRate;
import rollbook.recording.Overheads;
import rollbook.recording.Packing;
import rollbook.recording.PictureSize;
import rollbook.recording.RecordingFormat;

/** Worked by hand. */
class EstimatesTests {
    @Test
    void minutesInAFormatAreBytes() {
        // 4096 × 2160 × 12 bit / 8 = 13,271,040 bytes a frame; × 24 × 60 × 31.5 = 601,974,374,400.
        RecordingFormat format = new RecordingFormat(
                "Test",
                new PictureSize(4096, 2160),
                FrameRate.of(24),
                new Coding.Bayer(12, Packing.PACKED),
                Overheads.NONE,
                Audio.NONE);
        assertThat(RollSizes.estimate(new BigDecimal("31.50"), format).bytes()).isEqualTo(601_974_374_400L);
        assertThat(RollSizes.estimate(new BigDecimal("0.01"), format).bytes()).isEqualTo(191_102_976L);
        assertThat(RollSizes.estimate(BigDecimal.ZERO, format).bytes()).isZero();
    }

    @Test
    void theEndIsTheStartPlusBytesOverRate() {
        Instant start = Instant.parse("2031-03-03T18:00:00Z");
        assertThat(Estimates.end(start, 45_360_000_000L, 500_000_000L)).isEqualTo("2031-03-03T18:01:31Z");
        assertThat(Estimates.end(start, null, 500_000_000L)).isNull();
        assertThat(Estimates.end(start, 1L, null)).isNull();
    }

    @Test
    void theDifferenceIsAShareOfWhatWasExpected() {
        assertThat(Estimates.difference(410_000_000L, 500_000_000L)).isEqualTo(-0.18);
        assertThat(Estimates.difference(550_000_000L, 500_000_000L)).isEqualTo(0.1);
        assertThat(Estimates.difference(null, 500_000_000L)).isNull();
    }

    @Test
    void anEncodedCopyTakesItsShare() {
        assertThat(Estimates.percentOf(1_001L, 60)).isEqualTo(601);
        assertThat(Estimates.percentOf(Long.MAX_VALUE, 100)).isEqualTo(Long.MAX_VALUE);
        assertThat(Estimates.percentOf(null, 60)).isNull();
    }

    @Test
    void theSlowestPartLimits() {
        SessionPart card = part(OffloadRate.Place.CARD, "CARD-1", 800L);
        SessionPart reader = part(OffloadRate.Place.READER, "READER-1", 400L);
        SessionPart drive = part(OffloadRate.Place.DESTINATION, "DRIVE-1", 400L);
        SessionPart tape = part(OffloadRate.Place.DESTINATION, "TAPE-1", null);
        assertThat(SessionPart.slowest(List.of(card, reader, drive, tape))).isEqualTo("READER-1");
        assertThat(SessionPart.slowest(List.of(card, drive, reader))).isEqualTo("DRIVE-1");
        assertThat(SessionPart.slowest(List.of(tape))).isNull();
    }

    private static SessionPart part(OffloadRate.Place kind, String code, @Nullable Long bytesPerSecond) {
        return new SessionPart(kind, UUID.randomUUID(), code, bytesPerSecond, null, null, null, null);
    }
}

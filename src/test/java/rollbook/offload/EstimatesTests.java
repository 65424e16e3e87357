package rollbook.offload;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Worked by hand. */
class EstimatesTests {
    private static final BigDecimal RATE = BigDecimal.valueOf(24_000_000);

    @Test
    void minutesTimesRateAreBytes() {
        // 31.5 × 60 s × 24 MB/s = 45.36 GB
        assertThat(Estimates.bytes(new BigDecimal("31.5"), RATE)).isEqualTo(45_360_000_000L);
        assertThat(Estimates.bytes(new BigDecimal("0.01"), new BigDecimal("1"))).isEqualTo(1);
        assertThat(Estimates.bytes(null, RATE)).isNull();
        assertThat(Estimates.bytes(BigDecimal.ONE, null)).isNull();
        assertThat(Estimates.bytes(new BigDecimal("99999"), BigDecimal.valueOf(Long.MAX_VALUE)))
                .isEqualTo(Long.MAX_VALUE);
    }

    @Test
    void aCardHoldsWholeMinutes() {
        // 1 TB / (24 MB/s × 60 s) = 694.4 min
        assertThat(Estimates.minutesOn(1_000_000_000_000L, RATE)).isEqualTo(694);
        assertThat(Estimates.minutesOn(null, RATE)).isNull();
        assertThat(Estimates.minutesOn(1L, BigDecimal.ZERO)).isNull();
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
        SessionPart card = part(SessionPart.Kind.CARD, "CARD-1", 800L);
        SessionPart reader = part(SessionPart.Kind.READER, "READER-1", 400L);
        SessionPart drive = part(SessionPart.Kind.DESTINATION, "DRIVE-1", 400L);
        SessionPart tape = part(SessionPart.Kind.DESTINATION, "TAPE-1", null);
        assertThat(SessionPart.slowest(List.of(card, reader, drive, tape))).contains(reader);
        assertThat(SessionPart.slowest(List.of(card, drive, reader))).contains(drive);
        assertThat(SessionPart.slowest(List.of(tape))).isEmpty();
    }

    private static SessionPart part(SessionPart.Kind kind, String code, @Nullable Long bytesPerSecond) {
        return new SessionPart(kind, UUID.randomUUID(), code, bytesPerSecond, null, null, null, null);
    }
}

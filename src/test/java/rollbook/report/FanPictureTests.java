package rollbook.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rollbook.burndown.Band;
import rollbook.forecast.OrderFlag;
import rollbook.forecast.StorageStatus;

/** Places worked by hand: 220 wide for ten dates are 22 a date; zero lies at 56, and what the pool may hold at 4. */
class FanPictureTests {
    private static final LocalDate TODAY = LocalDate.of(2031, 3, 3);
    private static final LocalDate END = LocalDate.of(2031, 3, 12);

    static StorageStatus.Pool pool(
            String name, long roomBytes, @Nullable LocalDate orderBy, StorageStatus.Point... points) {
        return new StorageStatus.Pool(
                UUID.randomUUID(),
                name,
                name
                        + " runs out on day 17, Thu 12 March, with bad luck on day 15, Tue 10 March. Order 6 drives by Thu 5 March.",
                "order by Thu 5 Mar",
                OrderFlag.ORDER_BY,
                roomBytes,
                1_000,
                new Band(3, 4, 5, 6, 7),
                10,
                2,
                "12 %",
                orderBy,
                "6 drives",
                "€1,230.00",
                List.of(points));
    }

    static StorageStatus.Point point(int day, Band left) {
        return new StorageStatus.Point(LocalDate.of(2031, 3, day), left);
    }

    @Test
    void theFanBeginsWithTheRoomThereIsAndIsLevelAfterTheLastChange() {
        FanPicture fan =
                FanPicture.of(pool("Shuttle", 500, null, point(7, new Band(100, 200, 250, 300, 400))), TODAY, END);
        assertThat(fan.median()).isEqualTo("M0.0 30.0 L110.0 43.0 L220.0 43.0");
        assertThat(fan.outer()).isEqualTo("M0.0 30.0 L110.0 35.2 L220.0 35.2 L220.0 50.8 L110.0 50.8 L0.0 30.0 Z");
        assertThat(fan.inner()).isEqualTo("M0.0 30.0 L110.0 40.4 L220.0 40.4 L220.0 45.6 L110.0 45.6 L0.0 30.0 Z");
        assertThat(fan.capacity()).isEqualTo("M0 4.0 H220");
        assertThat(fan.orderBy()).isNull();
    }

    @Test
    void roomBelowZeroIsDrawnAtZeroAndMoreThanThePoolMayHoldToday() {
        FanPicture fan =
                FanPicture.of(pool("Shuttle", 500, null, point(4, new Band(-300, -200, 0, 1_000, 2_000))), TODAY, END);
        assertThat(fan.median()).as("2,000 at the top now").isEqualTo("M0.0 43.0 L44.0 56.0 L220.0 56.0");
        assertThat(fan.outer()).endsWith("L220.0 56.0 L44.0 56.0 L0.0 43.0 Z");
        assertThat(fan.capacity()).isEqualTo("M0 30.0 H220");
    }

    @Test
    void theOrderDateStandsWhereItsDateBeginsAndNotBeforeToday() {
        assertThat(FanPicture.of(pool("A", 500, LocalDate.of(2031, 3, 5)), TODAY, END)
                        .orderBy())
                .isEqualTo("M44.0 4 V56");
        assertThat(FanPicture.of(pool("A", 500, LocalDate.of(2031, 2, 1)), TODAY, END)
                        .orderBy())
                .isEqualTo("M0.0 4 V56");
        assertThat(FanPicture.of(pool("A", 500, LocalDate.of(2031, 4, 1)), TODAY, END)
                        .orderBy())
                .isNull();
    }
}

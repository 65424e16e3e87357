package rollbook.turnaround;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static rollbook.turnaround.TestDay.MINUTE;
import static rollbook.turnaround.TestDay.bars;
import static rollbook.turnaround.TestDay.megabytes;
import static rollbook.turnaround.TestDay.reader;

import java.util.List;
import org.junit.jupiter.api.Test;

class SharedTimeTests {
    /**
     * Processor sharing, computed from the work: cards of 512 GB begin 1,000 s after each other on a drive of 250 MB/s. The
     * first has it alone for 1,000 s, 250 GB; of its other 262 GB half as many pass each second, 2,096 s. Both together are
     * done when 1,024 GB are written, 4,096 s after the first began.
     */
    @Test
    void twoCardsOnOneDriveAreDoneWhenItsTimeSharedBetweenThemSaysSo() {
        TestDay day = new TestDay();
        day.cameras = List.of("CAM 1");
        day.recorded = megabytes(512);
        day.cardBytes = 512 * TestDay.GB;
        day.wrapMillis = 2_000 * TestDay.SECOND;
        day.readers = List.of(reader("READER 1", 2_000), reader("READER 2", 2_000));
        day.destinations = List.of(TestDay.destination("DRIVE", 250));
        long first = 1_000 * TestDay.SECOND;
        assertThat(day.played().activities())
                .filteredOn(bar -> bar.kind() == Activity.Kind.WRITING)
                .extracting(bar -> (bar.fromMillis() - first) / 1000.0, bar -> (bar.toMillis() - first) / 1000.0)
                .containsExactlyInAnyOrder(tuple(0.0, 3_096.0), tuple(1_000.0, 4_096.0));
    }

    /**
     * Worked by hand. A drive writes 200 and reads 50 MB/s. Card 1 comes at 10 min: 60 GB are written until 15, then read
     * back. Card 2 comes at 20, when 45 GB are left of that. Each has half of the drive’s time: 100 MB/s are written, which
     * takes until 30, and 25 MB/s read, which leaves 30 GB. Then both are read at 25 MB/s: the first until 50, when 30 GB are
     * left of the second, read at 50 MB/s until 60.
     */
    @Test
    void writingAndReadingBackShareADrivesTimeAndNotItsBytes() {
        assertThat(bars(played(1000, 200, 50), "DRIVE"))
                .containsExactlyInAnyOrder(
                        "10–15 WRITING", "15–50 READING_BACK", "20–30 WRITING", "30–60 READING_BACK");
    }

    /**
     * Worked by hand. The reader passes 100 MB/s, a quarter of what the drive writes. Card 1 is written from 10 to 20. Card 2
     * comes then, and its writing leaves three quarters of the drive’s time: until 30, 37.5 MB/s are read, 22.5 GB. Then both
     * are read at 25 MB/s: 37.5 GB until 55, and the second’s other 22.5 GB at 50 MB/s until 62.5.
     */
    @Test
    void timeThatOneCannotUseGoesToTheOther() {
        assertThat(bars(played(100, 400, 50), "DRIVE"))
                .containsExactlyInAnyOrder(
                        "10–20 WRITING", "20–55 READING_BACK", "20–30 WRITING", "30–62.5 READING_BACK");
    }

    /** Of a camera that fills two cards of 60 GB, one until 10 min and one until 20. */
    private static DayResult played(long reader, long write, long read) {
        TestDay day = new TestDay();
        day.cameras = List.of("CAM 1");
        day.wrapMillis = 20 * MINUTE;
        day.readers = List.of(reader("READER", reader));
        day.destinations = List.of(Destination.asRecorded("DRIVE", megabytes(write), megabytes(read)));
        day.readBack = new ReadBack(ReadBack.When.READER_FREE, Order.TOGETHER);
        return day.played();
    }
}

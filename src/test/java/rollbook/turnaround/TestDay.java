package rollbook.turnaround;

import java.util.ArrayList;
import java.util.List;
import rollbook.quantity.DataRate;

/**
 * A day to begin a test with: call at 0, one station S with one reader R and one destination A, cards of 60 GB in kind C,
 * cameras that record 100 MB/s (a card holds ten minutes), nothing that takes time but copying at 100 MB/s.
 */
record TestDay(DayPlan plan) {
    static final long SECOND = 1000;
    static final long MINUTE = 60 * SECOND;
    static final long HOUR = 60 * MINUTE;
    static final long GB = 1_000_000_000;
    static final DataRate MB100 = megabytes(100);

    static DataRate megabytes(long perSecond) {
        return DataRate.ofBytesPerSecond(perSecond * 1_000_000);
    }

    /** @param wrapMinutes of every camera */
    static TestDay of(int cards, long wrapMinutes, Takes takes, String... cameras) {
        List<CameraShift> shifts = new ArrayList<>();
        for (String camera : cameras) {
            shifts.add(new CameraShift(
                    camera,
                    "S",
                    "C",
                    MB100,
                    25,
                    0,
                    wrapMinutes * MINUTE,
                    List.of(),
                    takes,
                    PullRule.WHEN_FULL,
                    Delay.NONE));
        }
        Reader reader = new Reader("R", List.of(new Way("C", null, MB100)));
        Destination destination = Destination.asRecorded("A", megabytes(1000), megabytes(1000));
        Station station = new Station(
                "S",
                List.of(reader),
                null,
                null,
                List.of(destination),
                Order.TOGETHER,
                ReadBack.NEVER,
                Delay.NONE,
                Delay.NONE,
                Spread.NONE,
                0);
        return new TestDay(new DayPlan(
                shifts, List.of(new CardStock("C", 60 * GB, cards)), Runner.NONE, List.of(station), List.of()));
    }

    /** Takes of so many minutes without set-ups. */
    static Takes rolling(long minutes) {
        return new Takes(Delay.fixed(minutes * MINUTE), Delay.NONE);
    }

    DayResult played() {
        return Simulation.run(plan, Draws.MEANS);
    }
}

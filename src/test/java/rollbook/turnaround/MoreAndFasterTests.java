package rollbook.turnaround;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.turnaround.TestDay.MINUTE;
import static rollbook.turnaround.TestDay.destination;
import static rollbook.turnaround.TestDay.reader;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * What one more card and a faster part bring on the same luck: what always holds, on days drawn from seeds, and worked
 * examples of what doesn't.
 */
class MoreAndFasterTests {
    private static final long LAST_SEED = 200;

    @Test
    void withOneCameraOneMoreCardNeverAddsWaiting() {
        int waited = 0;
        for (long seed = 1; seed <= LAST_SEED; seed++) {
            TestDay day = oneCamera(new SplittableRandom(seed));
            DayResult fewer = played(day, seed);
            day.cards++;
            assertThat(played(day, seed).waitingMillis())
                    .as("seed %d", seed)
                    .isLessThanOrEqualTo(fewer.waitingMillis());
            waited += fewer.waitingMillis() > 0 ? 1 : 0;
        }
        assertThat(waited).isGreaterThan(50);
    }

    @Test
    void withOneCameraThatTakesTimeToChangeCardsOneMoreCardNeverTakesRecordedMinutes() {
        for (long seed = 1; seed <= LAST_SEED; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            TestDay day = oneCamera(random);
            day.change = delay(random, 1, 5);
            DayResult fewer = played(day, seed);
            day.cards++;
            assertThat(played(day, seed).recordedBytes())
                    .as("seed %d", seed)
                    .isGreaterThanOrEqualTo(fewer.recordedBytes());
        }
    }

    @Test
    void withCamerasThatFillCardsAlikeOneMoreCardNeverAddsWaitingOfAllTogether() {
        int waited = 0;
        for (long seed = 1; seed <= LAST_SEED; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            TestDay day = station(random);
            day.cameras = names("CAM ", random.nextInt(2, 5));
            day.takes = TestDay.rolling(10);
            DayResult fewer = played(day, seed);
            day.cards++;
            DayResult more = played(day, seed);
            assertThat(more.waitingMillis()).as("seed %d", seed).isLessThanOrEqualTo(fewer.waitingMillis());
            assertThat(more.recordedBytes()).as("seed %d", seed).isGreaterThanOrEqualTo(fewer.recordedBytes());
            waited += fewer.waitingMillis() > 0 ? 1 : 0;
        }
        assertThat(waited).isGreaterThan(100);
    }

    /**
     * One card: takes end at 3, 8 and 13, the card is back at 5 and 10 and never again. Each time it is back when the next
     * take is due, so changing holds the camera up, which isn’t waiting. It waits from 15 to 24.
     *
     * <p>Two cards: cards are changed in the set-ups, takes end at 3, 6, 9 and 12, and it waits from 14 to 24.
     */
    @Test
    void oneMoreCardMayTurnTimeLostByChangingIntoMoreTakesAndMoreWaiting() {
        TestDay day = new TestDay();
        day.cameras = List.of("CAM 1");
        day.cards = 1;
        day.pull = new PullRule(0, false);
        day.takes = new Takes(Delay.fixed(MINUTE), Delay.fixed(2 * MINUTE));
        day.change = Delay.fixed(2 * MINUTE);
        day.clearing = Delay.fixed(MINUTE);
        day.mishaps = List.of(new Mishap.ReaderDies("READER", 9 * MINUTE));
        day.wrapMillis = 24 * MINUTE;

        CameraDay one = day.played().cameras().get(0);
        day.cards = 2;
        CameraDay two = day.played().cameras().get(0);

        assertThat(one.recordedMillis()).isEqualTo(3 * MINUTE);
        assertThat(one.waitingMillis()).isEqualTo(9 * MINUTE);
        assertThat(two.recordedMillis()).isEqualTo(4 * MINUTE);
        assertThat(two.waitingMillis()).isEqualTo(10 * MINUTE);
    }

    /**
     * CAM 1 has takes of one minute and no set-ups, CAM 2 takes of three and set-ups of one; each take is a card, copied in
     * twice its time. With the fourth card CAM 1 fills three more cards, and CAM 2 waits for them in the queue: it loses a
     * take of three minutes, CAM 1 wins three of one.
     */
    @Test
    void oneMoreCardMayGoToTheCameraThatNeedsItLess() {
        TestDay day = new TestDay();
        day.pull = new PullRule(0, false);
        day.readers = List.of(reader("READER", 50));
        day.wrapMillis = 27 * MINUTE;
        CameraShift quick = day.shift("CAM 1", "CARD");
        day.takes = new Takes(Delay.fixed(3 * MINUTE), Delay.fixed(MINUTE));
        CameraShift slow = day.shift("CAM 2", "CARD");

        List<CameraDay> three = playedTogether(day, quick, slow, 3).cameras();
        List<CameraDay> four = playedTogether(day, quick, slow, 4).cameras();
        assertThat(three).extracting(camera -> camera.waitingMillis() / MINUTE).containsExactly(21L, 10L);
        assertThat(four).extracting(camera -> camera.waitingMillis() / MINUTE).containsExactly(18L, 14L);
        assertThat(three).extracting(camera -> camera.recordedMillis() / MINUTE).containsExactly(6L, 12L);
        assertThat(four).extracting(camera -> camera.recordedMillis() / MINUTE).containsExactly(9L, 9L);
    }

    private static DayResult playedTogether(TestDay day, CameraShift one, CameraShift other, int cards) {
        DayPlan plan = day.plan();
        return Simulation.run(
                new DayPlan(
                        List.of(one, other),
                        List.of(plan.cards().get(0).withCards(cards)),
                        plan.runner(),
                        plan.stations(),
                        List.of()),
                Draws.MEANS);
    }

    /** Cards for every take, so that the cameras never wait and the same comes to the station whatever is changed there. */
    @Test
    void withOneReaderAFasterPartNeverDelaysTheLastCard() {
        for (long seed = 1; seed <= LAST_SEED; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            TestDay day = oneCamera(random);
            day.cards = 2000;
            day.readers = List.of(reader("READER", random.nextLong(50, 500)));
            List<Long> speeds = new ArrayList<>(
                    List.of(random.nextLong(50, 500), random.nextLong(50, 500), random.nextLong(50, 500)));
            day.destinations = destinations(speeds);
            day.hostBus = TestDay.megabytes(random.nextLong(200, 2000));
            day.writing = Order.values()[random.nextInt(2)];
            day.readBack = new ReadBack(
                    random.nextBoolean() ? ReadBack.When.NEVER : ReadBack.When.HOLDING_READER,
                    Order.values()[random.nextInt(2)]);
            day.repeatChance = 0.1;
            DayResult slower = played(day, seed);
            int part = random.nextInt(5);
            if (part == 3) {
                day.hostBus = TestDay.megabytes(3000);
            } else if (part == 4) {
                day.readers = List.of(reader("READER", 600));
            } else {
                speeds.set(part, speeds.get(part) * 2);
                day.destinations = destinations(speeds);
            }
            assertThat(played(day, seed).lastProvenMillis())
                    .as("seed %d", seed)
                    .isLessThanOrEqualTo(slower.lastProvenMillis());
        }
    }

    @Test
    void withEqualReadersAndAmpleDrivesFasterReadersNeverDelayTheLastCard() {
        for (long seed = 1; seed <= LAST_SEED; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            TestDay day = oneCamera(random);
            day.cards = 2000;
            int count = random.nextInt(2, 5);
            long speed = random.nextLong(20, 200);
            day.readers = names("READER ", count).stream()
                    .map(name -> reader(name, speed))
                    .toList();
            DayResult slower = played(day, seed);
            day.readers = names("READER ", count).stream()
                    .map(name -> reader(name, speed + 20))
                    .toList();
            assertThat(played(day, seed).lastProvenMillis())
                    .as("seed %d", seed)
                    .isLessThanOrEqualTo(slower.lastProvenMillis());
        }
    }

    /**
     * Two cards come at 10 and two at 20. FAST copies a card in 10 minutes. At 50 MB/s SLOW takes 20, so both are free at 30
     * and the last card goes into FAST until 40. At 60 MB/s SLOW is free at 26:40, takes it and has it until 43:20.
     */
    @Test
    void aSlowReaderThatBecomesFasterMayDelayTheLastCard() {
        TestDay day = new TestDay();
        day.wrapMillis = 20 * MINUTE;
        day.readers = List.of(reader("FAST", 100), reader("SLOW", 50));
        assertThat(day.overtimeSeconds()).isEqualTo(20 * 60);

        day.readers = List.of(reader("FAST", 100), reader("SLOW", 60));
        assertThat(day.overtimeSeconds()).isEqualTo(23 * 60 + 20);
    }

    /** Takes, set-ups and breaks of one camera as chance wants them. */
    private static TestDay oneCamera(SplittableRandom random) {
        TestDay day = station(random);
        day.cameras = List.of("CAM 1");
        day.takes = new Takes(delay(random, 1, 15), delay(random, 0, 10));
        day.pull = new PullRule(random.nextDouble(), false);
        return day;
    }

    /** Equal readers, and a drive that is fast enough for all of them. */
    private static TestDay station(SplittableRandom random) {
        TestDay day = new TestDay();
        day.cards = random.nextInt(1, 6);
        day.wrapMillis = random.nextLong(60, 600) * MINUTE;
        if (random.nextBoolean()) {
            day.breaks = List.of(new Break(20 * MINUTE, random.nextLong(21, 59) * MINUTE));
        }
        long speed = random.nextLong(50, 400);
        day.readers = names("READER ", random.nextInt(1, 4)).stream()
                .map(name -> reader(name, speed))
                .toList();
        day.destinations = List.of(destination("DRIVE", 100_000));
        day.handling = delay(random, 0, 10);
        day.work = spread(random);
        day.clearing = Delay.fixed(random.nextLong(10) * MINUTE);
        day.runner =
                new Runner(Delay.fixed(random.nextLong(10) * MINUTE), 1, 0, Delay.fixed(random.nextLong(10) * MINUTE));
        return day;
    }

    private static List<Destination> destinations(List<Long> speeds) {
        return IntStream.range(0, speeds.size())
                .mapToObj(i -> destination("DRIVE " + i, speeds.get(i)))
                .toList();
    }

    private static Delay delay(SplittableRandom random, long fewestMinutes, long mostMinutes) {
        return new Delay(random.nextLong(fewestMinutes, mostMinutes) * MINUTE, spread(random));
    }

    private static Spread spread(SplittableRandom random) {
        return switch (random.nextInt(3)) {
            case 0 -> Spread.NONE;
            case 1 -> Spread.EXPONENTIAL;
            default -> new Spread.LogNormal(0.5);
        };
    }

    private static List<String> names(String begin, int count) {
        return IntStream.rangeClosed(1, count).mapToObj(i -> begin + i).toList();
    }

    private static DayResult played(TestDay day, long seed) {
        return Simulation.summary(day.plan(), Draws.of(seed, 0));
    }
}

package rollbook.turnaround;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Days as they may be, drawn from a seed: a few cameras, few cards, one or two readers, spreads on everything. */
final class RandomDay {
    private RandomDay() {}

    static DayPlan of(long seed) {
        Random random = new Random(seed);
        TestDay day = new TestDay();
        day.cameras = List.of("CAM 1", "CAM 2", "CAM 3").subList(0, random.nextInt(1, 4));
        day.wrapMillis = random.nextInt(4, 12) * TestDay.HOUR;
        day.takes = Takes.of(random.nextInt(10, 40), random.nextInt(2, 8), new Spread.LogNormal(0.5));
        day.cardBytes = random.nextInt(60, 240) * TestDay.GB;
        day.cards = random.nextInt(2, 8);
        day.pull = new PullRule(random.nextInt(5, 11) / 10.0, false);
        day.change = Delay.fixed(random.nextInt(0, 2) * TestDay.MINUTE);
        day.runner = new Runner(
                Delay.fixed(random.nextInt(0, 6) * TestDay.MINUTE),
                random.nextInt(1, 3),
                random.nextInt(5, 30) * TestDay.MINUTE,
                Delay.fixed(random.nextInt(0, 6) * TestDay.MINUTE));
        List<Reader> readers = new ArrayList<>();
        for (int i = 0; i < random.nextInt(1, 3); i++) {
            readers.add(TestDay.reader("READER " + i, random.nextInt(50, 200)));
        }
        day.readers = readers;
        day.destinations = List.of(
                TestDay.destination("DRIVE", random.nextInt(80, 400)),
                TestDay.destination("ARRAY", random.nextInt(80, 800)));
        day.readBack = new ReadBack(
                List.of(ReadBack.When.NEVER, ReadBack.When.HOLDING_READER, ReadBack.When.READER_FREE)
                        .get(random.nextInt(3)),
                Order.TOGETHER);
        day.handling = new Delay(2 * TestDay.MINUTE, new Spread.Uniform(0.5));
        day.clearing = new Delay(random.nextInt(0, 15) * TestDay.MINUTE, new Spread.LogNormal(0.5));
        day.work = new Spread.LogNormal(0.2);
        return day.plan();
    }
}

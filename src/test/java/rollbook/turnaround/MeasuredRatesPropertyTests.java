package rollbook.turnaround;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import rollbook.quantity.DataRate;
import rollbook.quantity.Fraction;
import rollbook.turnaround.OffloadPart.CardWay;
import rollbook.turnaround.OffloadPart.WrittenKind;
import rollbook.turnaround.PastSession.Written;

/** Shows made up from true speeds: each session runs at the slowest of what it passes. The seed is the repetition. */
class MeasuredRatesPropertyTests {
    private static final int SHOWS = 40;

    private final Map<OffloadPart, Integer> trueMegabytes = new HashMap<>();
    private final Map<OffloadPart, DataRate> stated = new HashMap<>();
    private final List<PastSession> sessions = new ArrayList<>();

    @RepeatedTest(SHOWS)
    void whatWasSeenOftenIsForetoldExactlyAndNoPartIsClearlySlowerThanWhatItPassed(RepetitionInfo repetition) {
        long seed = repetition.getCurrentRepetition();
        show(new Random(seed));
        MeasuredRates rates = MeasuredRates.of(sessions, stated);
        Map<Combination, Long> seen =
                sessions.stream().collect(Collectors.groupingBy(PastSession::combination, Collectors.counting()));
        seen.forEach((combination, times) -> {
            if (times >= 3) {
                DataRate reached = reached(combination);
                assertThat(rates.expected(combination.way(), combination.kinds())
                                .orElseThrow()
                                .rate()
                                .rate())
                        .as("seed %d, %s", seed, combination)
                        .isEqualTo(reached);
                for (OffloadPart part : combination.parts()) {
                    assertThat(rates.of(part).orElseThrow().rate())
                            .as("seed %d, %s in %s", seed, part, combination)
                            .isGreaterThanOrEqualTo(reached.times(Fraction.of(10, 11)));
                }
            }
        });
    }

    /** The catalogue says the truth, so nothing is left to be learned. */
    @RepeatedTest(SHOWS)
    void whereTheCatalogueIsRightEveryCombinationIsForetoldRightly(RepetitionInfo repetition) {
        long seed = repetition.getCurrentRepetition();
        show(new Random(seed));
        trueMegabytes.forEach((part, megabytes) -> stated.put(part, rate(megabytes)));
        MeasuredRates rates = MeasuredRates.of(sessions, stated);
        for (CardWay way : ways()) {
            for (WrittenKind kind : kinds()) {
                Combination combination = new Combination(way, java.util.Set.of(kind));
                assertThat(rates.expected(way, List.of(kind))
                                .orElseThrow()
                                .rate()
                                .rate())
                        .as("seed %d, %s", seed, combination)
                        .isBetween(
                                reached(combination).times(Fraction.of(10, 11)),
                                reached(combination).times(Fraction.of(11, 10)));
            }
        }
    }

    @RepeatedTest(SHOWS)
    void theOrderOfSessionsDoesNotMatterAndTwiceTheBytesAreTwiceTheRate(RepetitionInfo repetition) {
        long seed = repetition.getCurrentRepetition();
        Random random = new Random(seed);
        show(random);
        MeasuredRates rates = MeasuredRates.of(sessions, stated);
        List<PastSession> shuffled = new ArrayList<>(sessions);
        Collections.shuffle(shuffled, random);
        MeasuredRates ofShuffled = MeasuredRates.of(shuffled, stated);
        Map<OffloadPart, DataRate> twiceStated = new HashMap<>();
        stated.forEach((part, rate) -> twiceStated.put(part, rate.times(Fraction.of(2))));
        MeasuredRates ofTwice = MeasuredRates.of(
                sessions.stream()
                        .map(one -> new PastSession(
                                one.way(), one.written(), 2 * one.bytes(), one.startMillis(), one.endMillis()))
                        .toList(),
                twiceStated);
        for (OffloadPart part : trueMegabytes.keySet()) {
            assertThat(ofShuffled.of(part)).as("seed %d, %s", seed, part).isEqualTo(rates.of(part));
            assertThat(ofTwice.of(part).map(LearnedRate::rate))
                    .as("seed %d, %s", seed, part)
                    .isEqualTo(rates.of(part).map(rate -> rate.rate().times(Fraction.of(2))));
        }
    }

    /** Fewer late clicks than honest ones, however late: the median stays among the honest rates. */
    @RepeatedTest(SHOWS)
    void lateClicksNeverDragTheRateBelowWhatHonestSessionsReached(RepetitionInfo repetition) {
        long seed = repetition.getCurrentRepetition();
        Random random = new Random(seed);
        CardWay way = new CardWay("READER-1", null, "card");
        WrittenKind kind = new WrittenKind("drive");
        int honest = random.nextInt(2, 12);
        for (int i = 0; i < honest; i++) {
            add(way, kind, random.nextInt(380, 421), 1);
        }
        for (int i = 0; i < honest - 1; i++) {
            add(way, kind, 400, random.nextInt(2, 40));
        }
        Collections.shuffle(sessions, random);
        assertThat(MeasuredRates.of(sessions, Map.of(way, rate(480)))
                        .expected(way, List.of(kind))
                        .orElseThrow()
                        .rate()
                        .rate())
                .as("seed %d", seed)
                .isGreaterThanOrEqualTo(rate(380));
    }

    private void show(Random random) {
        List<CardWay> ways = new ArrayList<>();
        for (int i = 1; i <= 3; i++) {
            ways.add(new CardWay("READER-" + i, i == 3 ? "ADAPTER-1" : null, "card"));
        }
        List<WrittenKind> kinds = List.of(new WrittenKind("drive"), new WrittenKind("array"), new WrittenKind("tape"));
        ways.forEach(way -> speeds(way, random));
        kinds.forEach(kind -> speeds(kind, random));
        int count = random.nextInt(4, 40);
        for (int i = 0; i < count; i++) {
            CardWay way = ways.get(random.nextInt(3));
            WrittenKind kind = kinds.get(random.nextInt(3));
            add(way, kind, Math.min(trueMegabytes.get(way), trueMegabytes.get(kind)), 1);
        }
    }

    private void speeds(OffloadPart part, Random random) {
        int megabytes = random.nextInt(100, 1_000);
        trueMegabytes.put(part, megabytes);
        stated.put(part, rate(random.nextInt(megabytes / 2, 3 * megabytes)));
    }

    /** A hundred seconds of work, then perhaps some without; an hour apart. */
    private void add(CardWay way, WrittenKind kind, long megabytesPerSecond, int times) {
        long start = sessions.size() * 3_600_000L;
        sessions.add(new PastSession(
                way,
                List.of(new Written(kind.name() + " 1", kind)),
                megabytesPerSecond * 100_000_000,
                start,
                start + 100_000L * times));
    }

    private DataRate reached(Combination combination) {
        return rate(
                combination.parts().stream().mapToInt(trueMegabytes::get).min().orElseThrow());
    }

    private List<CardWay> ways() {
        return trueMegabytes.keySet().stream()
                .filter(CardWay.class::isInstance)
                .map(CardWay.class::cast)
                .toList();
    }

    private TreeSet<WrittenKind> kinds() {
        return trueMegabytes.keySet().stream()
                .filter(WrittenKind.class::isInstance)
                .map(WrittenKind.class::cast)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static DataRate rate(long megabytesPerSecond) {
        return DataRate.ofBytesPerSecond(megabytesPerSecond * 1_000_000);
    }
}

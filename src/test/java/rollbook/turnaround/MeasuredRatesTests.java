package rollbook.turnaround;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rollbook.quantity.DataRate;
import rollbook.turnaround.LearnedRate.Basis;
import rollbook.turnaround.OffloadPart.CardWay;
import rollbook.turnaround.OffloadPart.WrittenKind;
import rollbook.turnaround.PastSession.Written;

/** Worked by hand. The rules are common sense, no source. */
class MeasuredRatesTests {
    private static final CardWay DIRECT = new CardWay("READER-1", null, "1 TB");
    private static final CardWay ADAPTED = new CardWay("READER-2", "ADAPTER-1", "1 TB");
    private static final WrittenKind SHUTTLE = new WrittenKind("shuttle drive");
    private static final WrittenKind ARRAY = new WrittenKind("array");
    private static final Map<OffloadPart, DataRate> STATED =
            Map.of(DIRECT, rate(480), ADAPTED, rate(450), SHUTTLE, rate(500), ARRAY, rate(900));

    private final List<PastSession> sessions = new ArrayList<>();
    private long hour;

    /** 120 GB in 300, 292.68… and 285.71… s are 400, 410 and 420 MB/s; the median is 410, and the reader’s 480 was slowest. */
    @Test
    void theShowsOwnRateReplacesTheStatedOneOfThePartThatHeldTheSessionsBack() {
        reached(DIRECT, SHUTTLE, 420, 400, 410);

        MeasuredRates rates = MeasuredRates.of(sessions, STATED);

        assertThat(rates.of(DIRECT)).isEqualTo(learned(410, Basis.MEASURED, 3));
        assertThat(rates.of(SHUTTLE)).isEqualTo(learned(500, Basis.STATED, 0));
        assertThat(rates.expected(DIRECT, List.of(SHUTTLE))).hasValueSatisfying(expected -> {
            assertThat(Optional.of(expected.rate())).isEqualTo(learned(410, Basis.MEASURED, 3));
            assertThat(expected.slowest()).isEqualTo(DIRECT);
        });
    }

    @Test
    void anUnseenCombinationIsAsFastAsItsSlowestPart() {
        reached(DIRECT, SHUTTLE, 400, 410, 420);

        MeasuredRates rates = MeasuredRates.of(sessions, STATED);

        assertThat(rates.expected(DIRECT, List.of(ARRAY)).orElseThrow().rate())
                .isEqualTo(new LearnedRate(rate(410), Basis.MEASURED, 3));
        assertThat(rates.expected(ADAPTED, List.of(ARRAY, SHUTTLE)).orElseThrow())
                .isEqualTo(new MeasuredRates.Expected(new LearnedRate(rate(450), Basis.STATED, 0), ADAPTED));
    }

    @Test
    void twoSessionsTeachNothingUnlessNothingIsStated() {
        reached(DIRECT, SHUTTLE, 400, 420);

        assertThat(MeasuredRates.of(sessions, STATED).of(DIRECT)).isEqualTo(learned(480, Basis.STATED, 0));
        assertThat(MeasuredRates.of(sessions, Map.of()).of(DIRECT)).isEqualTo(learned(410, Basis.MEASURED, 2));
        assertThat(MeasuredRates.of(sessions, Map.of())
                        .expected(DIRECT, List.of(SHUTTLE))
                        .orElseThrow()
                        .rate()
                        .rate())
                .isEqualTo(rate(410));
    }

    /** Two sessions onto shuttles and one onto the array: the reader held back all three. */
    @Test
    void sessionsOfSeveralCombinationsTeachTheReaderTogether() {
        reached(DIRECT, SHUTTLE, 400, 420);
        reached(DIRECT, ARRAY, 430);

        assertThat(MeasuredRates.of(sessions, STATED).of(DIRECT)).isEqualTo(learned(420, Basis.MEASURED, 3));
    }

    @Test
    void aPartIsNeverSlowerThanWhatItPassed() {
        reached(ADAPTED, ARRAY, 600, 610, 620);

        MeasuredRates rates = MeasuredRates.of(sessions, STATED);

        assertThat(rates.of(ADAPTED)).as("charged").isEqualTo(learned(610, Basis.MEASURED, 3));
        reached(DIRECT, ARRAY, 950, 960, 970);
        reached(DIRECT, SHUTTLE, 700, 710, 720);
        rates = MeasuredRates.of(sessions, STATED);
        assertThat(rates.of(ARRAY)).as("not charged").isEqualTo(learned(960, Basis.PASSED, 3));
    }

    /**
     * Stated as the slowest are the shuttles (500), behind a reader said to do 800. But through another reader they took 495,
     * so it is the reader that does 200.
     */
    @Test
    void whatWasFasterElsewhereIsNotBlamed() {
        Map<OffloadPart, DataRate> stated = Map.of(DIRECT, rate(800), ADAPTED, rate(800), SHUTTLE, rate(500));
        reached(DIRECT, SHUTTLE, 199, 200, 201);
        assertThat(MeasuredRates.of(sessions, stated).of(SHUTTLE)).isEqualTo(learned(200, Basis.MEASURED, 3));

        reached(ADAPTED, SHUTTLE, 494, 495, 496);
        MeasuredRates rates = MeasuredRates.of(sessions, stated);
        assertThat(rates.of(SHUTTLE)).isEqualTo(learned(495, Basis.MEASURED, 3));
        assertThat(rates.of(DIRECT)).isEqualTo(learned(200, Basis.MEASURED, 3));
        assertThat(rates.of(ADAPTED)).isEqualTo(learned(800, Basis.STATED, 0));
    }

    /** Each of the three parts was faster elsewhere, so something else holds them back when they work together. */
    @Test
    void aWholeThatIsSlowerThanAllItsPartsBlamesNone() {
        reached(DIRECT, SHUTTLE, 470, 470, 470);
        reached(ADAPTED, ARRAY, 440, 440, 440);
        reached(DIRECT, ARRAY, 300, 300, 300);

        MeasuredRates rates = MeasuredRates.of(sessions, STATED);

        assertThat(rates.expected(DIRECT, List.of(ARRAY)))
                .contains(new MeasuredRates.Expected(new LearnedRate(rate(300), Basis.MEASURED, 3), null));
        assertThat(rates.of(DIRECT)).isEqualTo(learned(470, Basis.MEASURED, 3));
    }

    @Test
    void aLateClickAndAMistypedSizeAreOutvoted() {
        reached(DIRECT, SHUTTLE, 410, 12, 415, 4_150, 420);

        assertThat(MeasuredRates.of(sessions, STATED).of(DIRECT)).isEqualTo(learned(415, Basis.MEASURED, 5));
    }

    /** 250 and 260 MB/s were reached while both wrote to one drive: they count only while nothing else does. */
    @Test
    void sessionsThatSharedADriveAreLeftOutWhileThereAreOthers() {
        shared(250, 260);
        assertThat(MeasuredRates.of(sessions, STATED).expected(DIRECT, List.of(SHUTTLE)))
                .as("one of each combination: too few, so what is stated")
                .hasValueSatisfying(
                        expected -> assertThat(expected.rate().rate()).isEqualTo(rate(480)));

        shared(250, 260);
        shared(250, 260);
        assertThat(MeasuredRates.of(sessions, STATED)
                        .expected(DIRECT, List.of(SHUTTLE))
                        .orElseThrow()
                        .rate())
                .as("nothing else is known")
                .isEqualTo(new LearnedRate(rate(250), Basis.MEASURED, 3));

        reached(DIRECT, SHUTTLE, 400, 410, 420);
        assertThat(MeasuredRates.of(sessions, STATED)
                        .expected(DIRECT, List.of(SHUTTLE))
                        .orElseThrow()
                        .rate())
                .isEqualTo(new LearnedRate(rate(410), Basis.MEASURED, 3));
    }

    @Test
    void aTenthOfSharedTimeIsForgiven() {
        // 120 GB in 300 s; the other begins 30 s, then 31 s before the end.
        List<PastSession> tenth = List.of(session(DIRECT, "S-1", 0, 300), session(ADAPTED, "S-1", 270, 900));
        assertThat(undisturbed(tenth)).hasSize(2);
        List<PastSession> more = List.of(session(DIRECT, "S-1", 0, 300), session(ADAPTED, "S-1", 269, 900));
        assertThat(undisturbed(more)).containsExactly(more.get(1));
        List<PastSession> elsewhere = List.of(session(DIRECT, "S-1", 0, 300), session(ADAPTED, "S-2", 0, 300));
        assertThat(undisturbed(elsewhere)).hasSize(2);
    }

    /** Else one click on the next morning would disturb the whole evening. */
    @Test
    void aSessionThatWasMarkedLateDisturbsForTwiceItsUsualTimeAtMost() {
        PastSession late = session(DIRECT, "S-1", 0, 36_000);
        // 120 GB at 400 MB/s are 300 s, twice that 600 s.
        SpanOfWork span = SpanOfWork.of(late, rate(400));
        PastSession next = session(ADAPTED, "S-1", 600, 900);

        assertThat(span.endMillis()).isEqualTo(600_000);
        assertThat(SpanOfWork.undisturbed(List.of(span, SpanOfWork.of(next, rate(400)))))
                .containsExactly(late, next);
    }

    @Test
    void aSessionThatBrokeOffTeachesNothingAndDisturbs() {
        PastSession broken = new PastSession(ADAPTED, List.of(new Written("S-1", SHUTTLE)), 0, 0, 300_000);
        PastSession slowed = session(DIRECT, "S-1", 0, 600);
        MeasuredRates rates = MeasuredRates.of(List.of(broken, slowed), Map.of());

        assertThat(rates.of(ADAPTED)).isEmpty();
        assertThat(undisturbed(List.of(broken, slowed))).isEmpty();
    }

    @Test
    void nothingKnownIsNothingClaimed() {
        MeasuredRates rates = MeasuredRates.of(List.of(), Map.of());
        assertThat(rates.of(DIRECT)).isEmpty();
        assertThat(rates.expected(DIRECT, List.of(SHUTTLE))).isEmpty();
    }

    /** What a slow reader passed onto drives of unknown speed says nothing against the drives. */
    @Test
    void aDriveOfUnknownSpeedDoesNotLimitAFasterReader() {
        reached(DIRECT, SHUTTLE, 200, 200, 200);
        MeasuredRates rates = MeasuredRates.of(sessions, Map.of(DIRECT, rate(220), ADAPTED, rate(800)));

        assertThat(rates.of(SHUTTLE)).isEqualTo(learned(200, Basis.PASSED, 3));
        assertThat(rates.expected(ADAPTED, List.of(SHUTTLE))
                        .orElseThrow()
                        .rate()
                        .rate())
                .isEqualTo(rate(800));
    }

    private void shared(int megabytes, int othersMegabytes) {
        long start = 3_600_000 * hour++;
        sessions.add(new PastSession(
                DIRECT, List.of(new Written("S-1", SHUTTLE)), megabytes * 1_000_000_000L, start, start + 1_000_000));
        sessions.add(new PastSession(
                ADAPTED,
                List.of(new Written("S-1", SHUTTLE)),
                othersMegabytes * 1_000_000_000L,
                start,
                start + 1_000_000));
    }

    /** A thousand seconds each, one after another. */
    private void reached(CardWay way, WrittenKind kind, int... megabytesPerSecond) {
        for (int megabytes : megabytesPerSecond) {
            long start = 3_600_000 * hour++;
            sessions.add(new PastSession(
                    way,
                    List.of(new Written(kind.name() + " 1", kind)),
                    megabytes * 1_000_000_000L,
                    start,
                    start + 1_000_000));
        }
    }

    private static PastSession session(CardWay way, String medium, long fromSeconds, long toSeconds) {
        return new PastSession(
                way, List.of(new Written(medium, SHUTTLE)), 120_000_000_000L, fromSeconds * 1000, toSeconds * 1000);
    }

    private static List<PastSession> undisturbed(List<PastSession> sessions) {
        return SpanOfWork.undisturbed(
                sessions.stream().map(one -> SpanOfWork.of(one, null)).toList());
    }

    private static Optional<LearnedRate> learned(int megabytesPerSecond, Basis basis, int sessions) {
        return Optional.of(new LearnedRate(rate(megabytesPerSecond), basis, sessions));
    }

    private static DataRate rate(long megabytesPerSecond) {
        return DataRate.ofBytesPerSecond(megabytesPerSecond * 1_000_000);
    }
}

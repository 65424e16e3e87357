package rollbook.turnaround;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/**
 * How many cards of a kind must float, in cameras, on the way, being read or on the shelf, so that no camera waits; of all
 * other kinds there are more than enough.
 *
 * @param enough the smallest float with which no camera waits on a day on which everything takes its mean
 * @param rows the smallest float first; the last one is where hardly any or no camera waits
 */
public record CardFloat(String cardType, int enough, List<Row> rows) {

    /**
     * A float and what it brings.
     *
     * @param someCameraWaits the chance of it: the share of days for which no float up to this one was enough
     * @param waitingMinutes of all cameras together, on average
     */
    public record Row(int cards, Estimate someCameraWaits, Estimate waitingMinutes) {}

    /** The table begins so many cards below what is enough on a mean day. */
    private static final int FEWER = 4;

    private static final int MOST_ROWS = 20;

    /** A first guess at more cards than a day can fill, to see how many it does fill. */
    private static final int PLENTY = 1000;

    /**
     * @param cardType one that the plan has
     * @param hardlyEver the table ends when the chance that a camera waits is no greater
     */
    public static CardFloat of(DayPlan plan, String cardType, double hardlyEver, long seed, int replicates) {
        Invalid.unless(
                plan.cards().stream().anyMatch(stock -> stock.cardType().equals(cardType)),
                "cardType",
                "must be one of the plan’s: " + cardType);
        Invalid.unless(replicates > 1, "replicates", "must be 2 or more");
        DayPlan ample = withAmple(plan);
        int enough = 0;
        while (waitingMillis(ample, cardType, enough, Draws.MEANS) > 0) {
            enough++;
        }
        return new CardFloat(
                cardType, enough, rows(ample, cardType, Math.max(1, enough - FEWER), hardlyEver, seed, replicates));
    }

    /** The smallest float with which a camera waits at most on this share of days, if the table goes so far. */
    public OptionalInt waitsAtMost(double chance) {
        return rows.stream()
                .filter(row -> row.someCameraWaits().value() <= chance)
                .mapToInt(Row::cards)
                .findFirst();
    }

    private static List<Row> rows(
            DayPlan ample, String cardType, int from, double hardlyEver, long seed, int replicates) {
        List<Row> rows = new ArrayList<>();
        boolean[] enough = new boolean[replicates];
        double chance = 1;
        for (int cards = from; chance > hardlyEver && rows.size() < MOST_ROWS; cards++) {
            double[] minutes = new double[replicates];
            DayPlan plan = with(ample, cardType, cards);
            IntStream.range(0, replicates).parallel().filter(i -> !enough[i]).forEach(i -> {
                minutes[i] = waitingMillis(plan, Draws.of(seed, i)) / Outcomes.MILLIS_PER_MINUTE;
                enough[i] = minutes[i] == 0;
            });
            int waits = (int) Arrays.stream(minutes).filter(m -> m > 0).count();
            chance = (double) waits / replicates;
            rows.add(new Row(cards, Estimate.ofShare(waits, replicates), Estimate.ofMean(minutes)));
        }
        return rows;
    }

    private static DayPlan withAmple(DayPlan plan) {
        DayPlan plenty = plan.withCards(
                plan.cards().stream().map(stock -> stock.withCards(PLENTY)).toList());
        int pulled = Simulation.summary(plenty, Draws.MEANS).cameras().stream()
                .mapToInt(CameraDay::cardsPulled)
                .sum();
        int ample = 2 * (pulled + plan.cameras().size());
        return plan.withCards(
                plan.cards().stream().map(stock -> stock.withCards(ample)).toList());
    }

    private static DayPlan with(DayPlan plan, String cardType, int cards) {
        return plan.withCards(plan.cards().stream()
                .map(stock -> stock.cardType().equals(cardType) ? stock.withCards(cards) : stock)
                .toList());
    }

    private static long waitingMillis(DayPlan plan, String cardType, int cards, Draws draws) {
        return waitingMillis(with(plan, cardType, cards), draws);
    }

    private static long waitingMillis(DayPlan plan, Draws draws) {
        return Simulation.summary(plan, draws).waitingMillis();
    }
}

package rollbook.ordering;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * When a flag goes up and down as forecasts come in.
 *
 * <p>It looks at one figure: the chance that the pool runs out before an order could come that is left for a few more
 * order days. A flag goes up when that is more than the half of the risk that waiting may take (see {@link Ordering}), so
 * it is up when the order-by day comes. It goes down only when the figure has stayed under half of that on several dates
 * without a break, so a forecast that moves a little to and fro moves no flag.
 */
public final class FlagRule {
    /** Order days before the order-by day on which the flag goes up, roughly. */
    public static final int ORDER_DAYS_AHEAD = 3;

    /** Dates, the first one included, on which the figure has to be low before a flag goes down. */
    public static final int CALM_DATES = 3;

    static final double UP = Ordering.SHARE_OF_AN_ORDER;
    static final double DOWN = UP / 2;

    private FlagRule() {}

    /**
     * What a forecast says.
     *
     * @param risk chance of running out before an order could come that is left for {@link #ORDER_DAYS_AHEAD} days
     * @param allowedRisk of running out that is put up with in all
     */
    public record Sighting(LocalDate today, double risk, double allowedRisk) {
        public static Sighting of(OrderAdvice advice, LocalDate today) {
            return new Sighting(
                    today,
                    advice.waiting().get(ORDER_DAYS_AHEAD).mendableRisk(),
                    advice.level().allowedRisk());
        }

        boolean isHigh() {
            return risk > allowedRisk * UP;
        }

        boolean isLow() {
            return risk < allowedRisk * DOWN;
        }
    }

    /**
     * The flag after a forecast.
     *
     * @param flag null if there never was one
     */
    public static @Nullable Flag after(@Nullable Flag flag, Sighting sighting) {
        if (flag == null || flag.state().isClosed()) {
            return sighting.isHigh() ? Flag.openedOn(sighting.today()) : flag;
        }
        Flag woken = flag.wokenOn(sighting.today());
        if (!sighting.isLow()) {
            return woken.withoutCalm();
        }
        Flag calm = woken.calmOn(sighting.today());
        return calm.calmDatesOn(sighting.today()) >= CALM_DATES ? calm.closed(Flag.State.CLOSED_BY_FORECAST) : calm;
    }
}

package rollbook.ordering;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * When a flag goes up and down as forecasts come in.
 *
 * <p>It looks at one figure: how many times the risk put up with it is to wait for a few more order days. A flag goes up
 * when that is more than one, so it is up when the order-by day comes. It goes down only when the figure has stayed under a
 * half on several dates without a break, so a forecast that moves a little to and fro moves no flag.
 */
public final class FlagRule {
    /** Order days before the order-by day on which the flag goes up, roughly. */
    public static final int ORDER_DAYS_AHEAD = 3;

    /** Dates, the first one included, on which the figure has to be low before a flag goes down. */
    public static final int CALM_DATES = 5;

    static final double UP = 1;
    static final double DOWN = 0.5;

    private FlagRule() {}

    /**
     * What a forecast says.
     *
     * @param timesAllowed how many times the risk put up with it is to wait for {@link #ORDER_DAYS_AHEAD} order days
     */
    public record Sighting(LocalDate today, double timesAllowed) {
        public static Sighting of(OrderAdvice advice, LocalDate today) {
            return new Sighting(today, advice.timesAllowed(ORDER_DAYS_AHEAD));
        }

        boolean isHigh() {
            return timesAllowed > UP;
        }

        boolean isLow() {
            return timesAllowed < DOWN;
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

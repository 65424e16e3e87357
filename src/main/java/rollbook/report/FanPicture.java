package rollbook.report;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.function.ToLongFunction;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.Band;
import rollbook.forecast.StorageStatus;

/**
 * The room of a pool from today to the end of the show as a small fan, in the coordinates of an SVG of {@link #WIDTH} by
 * {@link #HEIGHT}: as a polygon what eight of ten courses of the show stay in, another what half of them stay in, a line that
 * half of them stay above. Zero is at the bottom; room below zero is drawn there.
 *
 * @param capacity a line at the height of what the pool may hold in all
 * @param orderBy a line at the last day to order on; null without one
 */
record FanPicture(
        String outer,
        String inner,
        String median,
        String base,
        String capacity,
        @Nullable String orderBy) {
    static final int WIDTH = 220;
    static final int HEIGHT = 60;
    private static final int TOP = 4;
    private static final int BOTTOM = 56;

    static FanPicture of(StorageStatus.Pool pool, LocalDate today, LocalDate endOfShow) {
        return new Drawing(pool, today, endOfShow).picture();
    }

    private record Drawing(StorageStatus.Pool pool, LocalDate today, LocalDate endOfShow) {
        FanPicture picture() {
            String level = "M0 %s H%d".formatted(number(y(pool.capacityBytes())), WIDTH);
            LocalDate orderBy = pool.orderBy();
            return new FanPicture(
                    between(Band::p90, Band::p10),
                    between(Band::p75, Band::p25),
                    "M" + String.join(" L", line(Band::p50)),
                    "M0 %d H%d".formatted(BOTTOM, WIDTH),
                    level,
                    orderBy == null || orderBy.isAfter(endOfShow)
                            ? null
                            : "M%s %d V%d".formatted(number(x(orderBy)), TOP, BOTTOM));
        }

        private String between(ToLongFunction<Band> upper, ToLongFunction<Band> lower) {
            List<String> back = new ArrayList<>(line(lower));
            Collections.reverse(back);
            return "M" + String.join(" L", line(upper)) + " L" + String.join(" L", back) + " Z";
        }

        /** From the room there is now; level after the last date on which anything happens. */
        private List<String> line(ToLongFunction<Band> quantile) {
            List<String> points = new ArrayList<>();
            points.add(point(0, y(pool.roomBytes())));
            long last = pool.roomBytes();
            for (StorageStatus.Point point : pool.points()) {
                last = quantile.applyAsLong(point.leftBytes());
                points.add(point(x(point.date().plusDays(1)), y(last)));
            }
            points.add(point(WIDTH, y(last)));
            return points;
        }

        /** The start of a date; today's is on the left edge, the end of the show's last date on the right one. */
        private double x(LocalDate date) {
            long days = ChronoUnit.DAYS.between(today, endOfShow) + 1;
            double share = days <= 0 ? 1 : (double) ChronoUnit.DAYS.between(today, date) / days;
            return Math.min(1, Math.max(0, share)) * WIDTH;
        }

        private double y(long bytes) {
            long most = pool.points().stream()
                    .mapToLong(point -> point.leftBytes().p90())
                    .reduce(Math.max(1, Math.max(pool.capacityBytes(), pool.roomBytes())), Math::max);
            return BOTTOM - Math.min(1, Math.max(0, (double) bytes / most)) * (BOTTOM - TOP);
        }

        private static String point(double x, double y) {
            return number(x) + " " + number(y);
        }

        private static String number(double value) {
            return String.format(Locale.ROOT, "%.1f", value);
        }
    }
}

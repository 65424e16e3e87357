package rollbook.forecast;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.LongStream;
import org.jspecify.annotations.Nullable;

/** Lays a burn-down out; see {@link BurnDownChart} for what it looks like. */
final class BurnDownDrawing {
    private static final int LEFT_MARGIN = 56;
    private static final int RIGHT_MARGIN = 72;
    private static final int TOP_MARGIN = 24;
    private static final int BOTTOM_MARGIN = 28;
    private static final int PANEL_GAP = 28;
    private static final double ROOM_SHARE = 0.62;
    private static final int DATE_LABEL_WIDTH = 64;
    private static final double BAR_SHARE = 0.7;

    private final LegForecast leg;
    private final BurnDown burnDown;
    private final LocalDate first;
    private final LocalDate end;
    private final int width;
    private final int height;
    private final double slot;
    private final AxisScale room;
    private final AxisScale perDay;

    BurnDownDrawing(LegForecast leg, LocalDate endOfShow, int width, int height) {
        this.leg = leg;
        this.burnDown = leg.burnDown();
        this.width = width;
        this.height = height;
        this.first = burnDown.points().get(0).date();
        this.end = endOfShow;
        this.slot = (width - LEFT_MARGIN - RIGHT_MARGIN) / (ChronoUnit.DAYS.between(first, end) + 1.0);
        double plots = height - TOP_MARGIN - PANEL_GAP - BOTTOM_MARGIN;
        double roomBase = TOP_MARGIN + plots * ROOM_SHARE;
        this.room = AxisScale.of(highestRoom(), BurnDownChart.round(roomBase), TOP_MARGIN);
        this.perDay = AxisScale.of(highestDay(), height - BOTTOM_MARGIN, BurnDownChart.round(roomBase + PANEL_GAP));
    }

    BurnDownChart chart() {
        BurnDown.Point last = burnDown.points().get(burnDown.points().size() - 1);
        return new BurnDownChart(
                width,
                height,
                LEFT_MARGIN,
                width - RIGHT_MARGIN,
                room,
                perDay,
                dateTicks(),
                pastLine(),
                comingLine(),
                burnDown.points().stream().map(this::bar).toList(),
                arrivals(),
                startX(burnDown.today()),
                room.y(burnDown.capacityNowBytes()),
                new BurnDownChart.Spot(endX(last.date()), room.y(Objects.requireNonNull(last.leftBytes()))),
                orderFlag(),
                leg.runOut() == null
                        ? null
                        : mark(startX(leg.runOut().date()), leg.runOut().date(), leg.shortfallBytes()),
                mark(endX(end), end, leg.roomAtEndBytes()));
    }

    private long highestRoom() {
        LongStream left = burnDown.points().stream()
                .map(BurnDown.Point::leftBytes)
                .filter(Objects::nonNull)
                .mapToLong(Long::longValue);
        return LongStream.concat(left, LongStream.of(burnDown.roomNowBytes(), burnDown.capacityNowBytes()))
                .max()
                .orElse(0);
    }

    private long highestDay() {
        return burnDown.points().stream()
                .mapToLong(point -> Math.max(point.plannedBytes(), point.actualBytes() + point.expectedBytes()))
                .max()
                .orElse(0);
    }

    private String pastLine() {
        List<String> line = new ArrayList<>();
        for (BurnDown.Point point : burnDown.points()) {
            Long bytes = point.leftBytes();
            if (point.date().isBefore(burnDown.today()) && bytes != null) {
                line.add(at(endX(point.date()), bytes));
            }
        }
        if (!line.isEmpty()) {
            line.add(at(startX(burnDown.today()), burnDown.roomNowBytes()));
        }
        return String.join(" ", line);
    }

    private String comingLine() {
        List<String> line = new ArrayList<>();
        long before = burnDown.roomNowBytes();
        for (BurnDown.Point point : burnDown.points()) {
            Long after = point.leftBytes();
            if (point.date().isBefore(burnDown.today()) || after == null) {
                continue;
            }
            double start = startX(point.date());
            double finish = endX(point.date());
            line.add(at(start, before));
            if (point.returnedBytes() != point.leavingBytes()) {
                line.add(at(start, before + point.returnedBytes() - point.leavingBytes()));
            }
            line.add(at(finish, after - point.arrivedBytes()));
            if (point.arrivedBytes() > 0) {
                line.add(at(finish, after));
            }
            before = after;
        }
        return String.join(" ", line);
    }

    private BurnDownChart.DayBar bar(BurnDown.Point point) {
        double actualY = perDay.y(point.actualBytes());
        double expectedY = perDay.y(point.actualBytes() + point.expectedBytes());
        return new BurnDownChart.DayBar(
                point.date(),
                BurnDownChart.round(startX(point.date()) + slot * (1 - BAR_SHARE) / 2),
                BurnDownChart.round(slot * BAR_SHARE),
                actualY,
                BurnDownChart.round(perDay.baseY() - actualY),
                expectedY,
                BurnDownChart.round(actualY - expectedY),
                perDay.y(point.plannedBytes()));
    }

    private List<BurnDownChart.Mark> arrivals() {
        return burnDown.points().stream()
                .filter(point -> point.arrivedBytes() > 0)
                .map(point -> mark(endX(point.date()), point.date(), point.arrivedBytes()))
                .toList();
    }

    private BurnDownChart.@Nullable Mark orderFlag() {
        OrderProposal order = leg.order();
        if (order == null) {
            return null;
        }
        LocalDate at = order.orderBy().isBefore(burnDown.today()) ? burnDown.today() : order.orderBy();
        return mark(startX(at), order.orderBy(), order.capacityBytes());
    }

    /** Dates with a shooting day, as many as fit with their labels, at the middle of their slots. */
    private List<BurnDownChart.DateTick> dateTicks() {
        List<BurnDownChart.DateTick> ticks = new ArrayList<>();
        double free = LEFT_MARGIN;
        for (BurnDown.Point point : burnDown.points()) {
            double x = startX(point.date()) + slot / 2;
            if (!point.days().isEmpty() && x >= free) {
                ticks.add(new BurnDownChart.DateTick(BurnDownChart.round(x), point.date(), point.days()));
                free = x + DATE_LABEL_WIDTH;
            }
        }
        return ticks;
    }

    private BurnDownChart.Mark mark(double x, LocalDate date, long bytes) {
        return new BurnDownChart.Mark(x, room.baseY(), date, bytes);
    }

    private String at(double x, long bytes) {
        return x + "," + room.y(bytes);
    }

    private double startX(LocalDate date) {
        return BurnDownChart.round(LEFT_MARGIN + slot * ChronoUnit.DAYS.between(first, date));
    }

    private double endX(LocalDate date) {
        return startX(date.plusDays(1));
    }
}

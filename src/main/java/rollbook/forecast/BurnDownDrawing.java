package rollbook.forecast;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
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

    /** The room at a place on the dates' axis. */
    private record Level(double x, long bytes) {}

    private final LegForecast leg;
    private final BurnDown burnDown;
    private final LocalDate first;
    private final LocalDate end;
    private final int width;
    private final int height;
    private final double slot;
    private final List<Level> past;
    private final List<Level> coming;
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
        this.past = past();
        this.coming = coming();
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
                drawn(past),
                drawn(coming),
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
        return Stream.concat(past.stream(), coming.stream())
                .mapToLong(Level::bytes)
                .reduce(burnDown.capacityNowBytes(), Math::max);
    }

    private long highestDay() {
        return burnDown.points().stream()
                .mapToLong(point -> Math.max(point.plannedBytes(), point.actualBytes() + point.expectedBytes()))
                .max()
                .orElse(0);
    }

    private List<Level> past() {
        List<Level> line = new ArrayList<>();
        for (BurnDown.Point point : burnDown.points()) {
            Long bytes = point.leftBytes();
            if (point.date().isBefore(burnDown.today()) && bytes != null) {
                if (!line.isEmpty()) {
                    line.add(new Level(
                            startX(point.date()), line.get(line.size() - 1).bytes()));
                }
                line.add(new Level(endX(point.date()), bytes));
            }
        }
        if (!line.isEmpty()) {
            line.add(new Level(startX(burnDown.today()), burnDown.roomNowBytes()));
        }
        return line;
    }

    private List<Level> coming() {
        List<Level> line = new ArrayList<>();
        long before = burnDown.roomNowBytes();
        for (BurnDown.Point point : burnDown.points()) {
            Long after = point.leftBytes();
            if (!point.date().isBefore(burnDown.today()) && after != null) {
                double start = startX(point.date());
                double finish = endX(point.date());
                line.add(new Level(start, before));
                line.add(new Level(start, before + point.returnedBytes() - point.leavingBytes()));
                line.add(new Level(finish, after - point.arrivedBytes()));
                line.add(new Level(finish, after));
                before = after;
            }
        }
        return line;
    }

    /** The line's points as SVG wants them, each once. */
    private String drawn(List<Level> line) {
        List<String> points = line.stream()
                .map(level -> level.x() + "," + room.y(level.bytes()))
                .toList();
        return IntStream.range(0, points.size())
                .filter(i -> i == 0 || !points.get(i).equals(points.get(i - 1)))
                .mapToObj(points::get)
                .collect(Collectors.joining(" "));
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

    private double startX(LocalDate date) {
        return BurnDownChart.round(LEFT_MARGIN + slot * ChronoUnit.DAYS.between(first, date));
    }

    private double endX(LocalDate date) {
        return startX(date.plusDays(1));
    }
}

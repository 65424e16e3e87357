package rollbook.forecast;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.ToLongFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.Band;
import rollbook.burndown.PoolOutlook;
import rollbook.picture.AxisScale;
import rollbook.picture.Coordinates;

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
    private static final double HALF = 0.5;
    private static final double TENTH = 0.1;

    /** The room at a place on the dates' axis. */
    private record Level(double x, long bytes) {}

    private final BurnDown burnDown;
    private final PoolOutlook pool;
    private final @Nullable LocalDate orderBy;
    private final LocalDate first;
    private final int width;
    private final int height;
    private final double slot;
    private final List<Level> past;
    private final AxisScale room;
    private final AxisScale perDay;

    BurnDownDrawing(BurnDown burnDown, @Nullable LocalDate orderBy, int width, int height) {
        this.burnDown = burnDown;
        this.pool = burnDown.pool();
        this.orderBy = orderBy;
        this.width = width;
        this.height = height;
        this.first = burnDown.points().get(0).date();
        this.slot = (width - LEFT_MARGIN - RIGHT_MARGIN) / (ChronoUnit.DAYS.between(first, burnDown.endOfShow()) + 1.0);
        this.past = past();
        double plots = height - TOP_MARGIN - PANEL_GAP - BOTTOM_MARGIN;
        double roomBase = TOP_MARGIN + plots * ROOM_SHARE;
        this.room = AxisScale.of(highestRoom(), Coordinates.round(roomBase), TOP_MARGIN);
        this.perDay = AxisScale.of(highestDay(), height - BOTTOM_MARGIN, Coordinates.round(roomBase + PANEL_GAP));
    }

    BurnDownChart chart() {
        return new BurnDownChart(
                width,
                height,
                LEFT_MARGIN,
                width - RIGHT_MARGIN,
                room,
                perDay,
                dateTicks(),
                drawn(past),
                drawn(coming(Band::p50)),
                outline(Band::p25, Band::p75),
                outline(Band::p10, Band::p90),
                burnDown.points().stream().map(this::bar).toList(),
                arrivals(),
                startX(burnDown.today()),
                room.y(pool.capacityNowBytes()),
                ends(),
                orderFlag(),
                runOut(),
                mark(endX(burnDown.endOfShow()), burnDown.endOfShow()));
    }

    private long highestRoom() {
        return Stream.concat(
                        past.stream().map(Level::bytes),
                        burnDown.coming().map(point -> point.leftBytes().p90()))
                .reduce(Math.max(pool.capacityNowBytes(), pool.roomNowBytes()), Math::max);
    }

    private long highestDay() {
        return burnDown.points().stream()
                .mapToLong(point -> Math.max(
                        point.plannedBytes(),
                        point.actualBytes()
                                + (point.outlook() == null
                                        ? 0
                                        : point.outlook().demandBytes().p90())))
                .max()
                .orElse(0);
    }

    private List<Level> past() {
        List<Level> line = new ArrayList<>();
        for (BurnDown.Point point : burnDown.points()) {
            Long bytes = point.pastLeftBytes();
            if (bytes != null) {
                if (!line.isEmpty()) {
                    line.add(new Level(
                            startX(point.date()), line.get(line.size() - 1).bytes()));
                }
                line.add(new Level(endX(point.date()), bytes));
            }
        }
        if (!line.isEmpty()) {
            line.add(new Level(startX(burnDown.today()), pool.roomNowBytes()));
        }
        return line;
    }

    private List<Level> coming(ToLongFunction<Band> quantile) {
        List<Level> line = new ArrayList<>();
        long before = pool.roomNowBytes();
        for (PoolOutlook.Point point : burnDown.coming().toList()) {
            long after = quantile.applyAsLong(point.leftBytes());
            line.add(new Level(startX(point.date()), before));
            line.add(new Level(endX(point.date()), after));
            before = after;
        }
        return line;
    }

    /** There and back again. */
    private String outline(ToLongFunction<Band> low, ToLongFunction<Band> high) {
        List<Level> back = coming(low);
        Collections.reverse(back);
        return drawn(Stream.concat(coming(high).stream(), back.stream()).toList());
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
        Band expected = point.outlook() == null ? Band.NONE : point.outlook().demandBytes();
        double actualY = perDay.y(point.actualBytes());
        double expectedY = perDay.y(point.actualBytes() + expected.p50());
        double plannedY = perDay.y(point.plannedBytes());
        return new BurnDownChart.DayBar(
                point.date(),
                Coordinates.round(startX(point.date()) + slot * (1 - BAR_SHARE) / 2),
                Coordinates.round(slot * BAR_SHARE),
                actualY,
                Coordinates.round(perDay.baseY() - actualY),
                expectedY,
                Coordinates.round(actualY - expectedY),
                perDay.y(point.actualBytes() + expected.p10()),
                perDay.y(point.actualBytes() + expected.p90()),
                plannedY,
                Coordinates.round(perDay.baseY() - plannedY));
    }

    private List<BurnDownChart.Mark> arrivals() {
        return pool.arrivals().stream()
                .map(PoolOutlook.ExpectedArrival::usualDate)
                .filter(date -> !date.isAfter(burnDown.endOfShow()) && !date.isBefore(burnDown.today()))
                .distinct()
                .map(date -> mark(endX(date), date))
                .toList();
    }

    private List<BurnDownChart.End> ends() {
        Band left = burnDown.coming()
                .reduce((earlier, later) -> later)
                .map(PoolOutlook.Point::leftBytes)
                .orElse(Band.certain(pool.roomNowBytes()));
        double x = endX(burnDown.endOfShow());
        return List.of(end(x, left.p90()), end(x, left.p50()), end(x, left.p10()));
    }

    private BurnDownChart.End end(double x, long bytes) {
        return new BurnDownChart.End(x, room.y(bytes), bytes);
    }

    private BurnDownChart.@Nullable Mark orderFlag() {
        return orderBy == null || orderBy.isAfter(burnDown.endOfShow())
                ? null
                : mark(startX(orderBy.isBefore(burnDown.today()) ? burnDown.today() : orderBy), orderBy);
    }

    private BurnDownChart.@Nullable RunOutMark runOut() {
        LocalDate likely = pool.runsOutBy(HALF);
        LocalDate date = likely == null ? pool.runsOutBy(TENTH) : likely;
        return date == null ? null : new BurnDownChart.RunOutMark(startX(date), room.baseY(), date, likely != null);
    }

    /** Dates with a shooting day, as many as fit with their labels, at the middle of their slots. */
    private List<BurnDownChart.DateTick> dateTicks() {
        List<BurnDownChart.DateTick> ticks = burnDown.points().stream()
                .filter(point -> !point.days().isEmpty())
                .map(point -> new BurnDownChart.DateTick(
                        Coordinates.round(startX(point.date()) + slot / 2), point.date(), point.days()))
                .toList();
        return Coordinates.withRoom(ticks, BurnDownChart.DateTick::x, DATE_LABEL_WIDTH);
    }

    private BurnDownChart.Mark mark(double x, LocalDate date) {
        return new BurnDownChart.Mark(x, room.baseY(), date);
    }

    private double startX(LocalDate date) {
        return Coordinates.round(LEFT_MARGIN + slot * ChronoUnit.DAYS.between(first, date));
    }

    private double endX(LocalDate date) {
        return startX(date.plusDays(1));
    }
}

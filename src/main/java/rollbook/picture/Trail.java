package rollbook.picture;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Stays and marks over time, a lane below the other, from the first thing that happened to the end. Places are percentages of the
 * width, so that a page, a phone and paper each stretch it as they like.
 *
 * @param ticks where days begin that get a label
 */
public record Trail(List<Tick> ticks, List<Lane> lanes) {
    private static final int TICKS_AT_MOST = 4;
    private static final double SECONDS_LEAST = 60;
    /** Less than this can't be seen. */
    private static final double NARROWEST = 0.004;
    /** Nearer to the end than this, a label would stand beside the picture. */
    private static final double NEAR_THE_END = 0.72;

    /** What a label takes of the width of a phone. */
    private static final double LABEL = 0.2;

    /** The beginning of a day in the production's zone. */
    public record Tick(String x, LocalDate date) {}

    /** @param says the same as its stays and marks, for who can't see them */
    public record Lane(String name, List<Stay> stays, List<Mark> marks, String says) {}

    /** @param style a class of the style sheet; empty for the usual */
    public record Stay(String x, String width, String style, String says) {}

    /** @param style the name of the mark's shape */
    public record Mark(String x, String style, String says) {}

    /** What a lane is drawn from. */
    public record Line(String name, List<Span> spans, List<Dot> dots) {}

    /** @param to null while it lasts */
    public record Span(Instant from, @Nullable Instant to, String style, String says) {}

    /** A moment. */
    public record Dot(Instant at, String style, String says) {}

    /** @param end of the axis, see {@link #end} */
    public static Trail of(List<Line> lines, Instant end, ZoneId zone) {
        Axis axis = new Axis(first(lines, end), end);
        return new Trail(axis.ticks(zone), lines.stream().map(axis::lane).toList());
    }

    /** The end of the hour: a picture that ends there stays the same for a while, so a page that asks again finds no change. */
    public static Instant end(Instant now) {
        return now.truncatedTo(ChronoUnit.HOURS).plus(1, ChronoUnit.HOURS);
    }

    private static Instant first(List<Line> lines, Instant end) {
        return lines.stream()
                .flatMap(line -> Stream.concat(
                        line.spans().stream().map(Span::from),
                        line.dots().stream().map(Dot::at)))
                .min(Instant::compareTo)
                .filter(first -> first.isBefore(end))
                .orElse(end);
    }

    private record Axis(Instant from, Instant to) {
        Lane lane(Line line) {
            List<Stay> stays = line.spans().stream().map(this::stay).toList();
            List<Mark> marks = line.dots().stream()
                    .map(dot -> new Mark(Coordinates.percent(share(dot.at())), dot.style(), dot.says()))
                    .toList();
            List<String> says = Stream.concat(
                            stays.stream().map(Stay::says), marks.stream().map(Mark::says))
                    .toList();
            return new Lane(line.name(), stays, marks, String.join(" ", says));
        }

        private Stay stay(Span span) {
            double start = share(span.from());
            double end = span.to() == null ? 1 : share(span.to());
            double width = Math.max(NARROWEST, end - start);
            return new Stay(
                    Coordinates.percent(Math.min(start, 1 - width)),
                    Coordinates.percent(width),
                    span.style(),
                    span.says());
        }

        List<Tick> ticks(ZoneId zone) {
            LocalDate first = from.atZone(zone).toLocalDate();
            long days = ChronoUnit.DAYS.between(first, to.atZone(zone).toLocalDate()) + 1;
            long step = Math.max(1, (days + TICKS_AT_MOST - 1) / TICKS_AT_MOST);
            List<LocalDate> dates = LongStream.iterate(0, day -> day < days, day -> day + step)
                    .mapToObj(first::plusDays)
                    .filter(date -> share(date, zone) < NEAR_THE_END)
                    .toList();
            return Coordinates.withRoom(dates, date -> share(date, zone), LABEL).stream()
                    .map(date -> new Tick(Coordinates.percent(share(date, zone)), date))
                    .toList();
        }

        private double share(LocalDate date, ZoneId zone) {
            return share(date.atStartOfDay(zone).toInstant());
        }

        /** What lies before the first moment, as the beginning of its day does, is drawn there. */
        private double share(Instant at) {
            double length = Math.max(SECONDS_LEAST, ChronoUnit.SECONDS.between(from, to));
            return Math.min(1, Math.max(0, ChronoUnit.SECONDS.between(from, at) / length));
        }
    }
}

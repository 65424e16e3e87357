package rollbook.forecast;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.picture.AxisScale;
import rollbook.picture.Coordinates;
import rollbook.picture.Words;
import rollbook.web.Display;

/** Writes the labels onto burn-downs, so that they are read where they belong and don't lie on each other. */
@Component
class BurnDownPictures {
    private static final int CAPTION_WIDTH = 64;
    private static final int CLOTH_HEIGHT = 22;
    private static final double CLOTH_FROM_TOP = 0.2;
    private static final int LINE = 13;
    /** The width of a letter, a little too large for the usual typefaces. */
    private static final double LETTER = 7.4;

    private final Display display;
    private final StorageWords words;

    BurnDownPictures(Display display, StorageWords words) {
        this.display = display;
        this.words = words;
    }

    BurnDownPicture large(LegForecast leg, BurnDown burnDown) {
        return new Layout(leg, BurnDownChart.of(burnDown, orderBy(leg), 880, 340)).picture("large");
    }

    BurnDownPicture small(LegForecast leg, BurnDown burnDown) {
        return new Layout(leg, BurnDownChart.of(burnDown, orderBy(leg), 360, 300)).picture("small");
    }

    private static @Nullable LocalDate orderBy(LegForecast leg) {
        return leg.order() == null ? null : leg.order().orderBy();
    }

    private final class Layout {
        private final LegForecast leg;
        private final BurnDownChart chart;
        private final List<Words> placed = new ArrayList<>();

        Layout(LegForecast leg, BurnDownChart chart) {
            this.leg = leg;
            this.chart = chart;
        }

        BurnDownPicture picture(String size) {
            axis("forecast.chart.room", chart.room(), chart.room().topY() - 10);
            axis("forecast.chart.per-day", chart.perDay(), chart.perDay().topY() - 9);
            chart.dateTicks().forEach(tick -> place(tick.x(), chart.height() - 8, "middle", "tick", days(tick)));
            capacity();
            today();
            ends();
            return new BurnDownPicture(
                    chart,
                    size,
                    display.text("forecast.chart.title", leg.legName()),
                    words.picture(leg),
                    placed,
                    flag());
        }

        private void axis(String key, AxisScale axis, double captionY) {
            place(4, captionY, "start", "tick", display.text(key, axis.unit()));
            axis.ticks().forEach(tick -> place(chart.plotLeft() - 6, tick.y() + 4, "end", "tick", tick.label()));
        }

        private String days(BurnDownChart.DateTick tick) {
            return display.text(
                    "forecast.chart.day",
                    tick.days().stream()
                            .map(day -> Integer.toString(day.number()))
                            .distinct()
                            .collect(Collectors.joining("/")));
        }

        /** On the side that today isn't on; under its line where today's word stands above it. */
        private void capacity() {
            String text = display.text(
                    "forecast.chart.capacity", display.size(leg.outlook().capacityNowBytes()));
            boolean todayIsEarly = chart.todayX() < (chart.plotLeft() + chart.plotRight()) / 2;
            place(
                    todayIsEarly ? chart.plotRight() - 4 : chart.plotLeft() + 4,
                    chart.capacityY() + (chart.capacityY() - chart.room().topY() < LINE ? LINE : -5),
                    todayIsEarly ? "end" : "start",
                    "tick",
                    text);
        }

        private void today() {
            place(
                    Math.max(chart.todayX() + 4, CAPTION_WIDTH),
                    chart.room().topY() - 10,
                    "start",
                    "label",
                    display.text("forecast.chart.today"));
            if (chart.endOfShow().x() - chart.todayX() > 2 * CAPTION_WIDTH) {
                place(
                        chart.endOfShow().x(),
                        chart.perDay().topY() - 9,
                        "middle",
                        "tick",
                        display.text("forecast.chart.end-of-show"));
            }
        }

        /** The fan's ends are named as far as they don't lie on each other, the middle one first. */
        private void ends() {
            List<BurnDownChart.End> named = new ArrayList<>();
            List<BurnDownChart.End> ends = chart.ends();
            for (BurnDownChart.End end : List.of(ends.get(1), ends.get(0), ends.get(2))) {
                if (named.stream().allMatch(other -> Math.abs(other.y() - end.y()) >= LINE)) {
                    named.add(end);
                    String left = display.size(Math.max(0, end.bytes()));
                    place(chart.plotRight() + 4, end.y() + 4, "start", "tick", left);
                }
            }
            BurnDownChart.RunOutMark runOut = chart.runOut();
            if (runOut != null) {
                String full = display.text(
                        runOut.likely() ? "forecast.chart.full" : "forecast.chart.full-early",
                        words.shortDate(runOut.date()));
                boolean fits = runOut.x() + 8 + full.length() * LETTER < chart.width();
                place(
                        fits ? runOut.x() + 8 : chart.width() - 2,
                        runOut.y() - 12,
                        fits ? "start" : "end",
                        "tick strong",
                        full);
            }
        }

        private BurnDownPicture.@Nullable Flag flag() {
            BurnDownChart.Mark mark = chart.orderFlag();
            if (mark == null) {
                return null;
            }
            String text = leg.need() == OrderFlag.LATE
                    ? display.text("forecast.chart.late")
                    : display.text("forecast.chart.order-by", words.shortDate(mark.date()));
            double width = Coordinates.round(text.length() * LETTER + 12);
            double left = mark.x() + width <= chart.width() - 4 ? mark.x() : Math.max(0, mark.x() - width);
            double top = Coordinates.round(
                    chart.room().topY() + (chart.room().baseY() - chart.room().topY()) * CLOTH_FROM_TOP);
            return new BurnDownPicture.Flag(
                    mark.x(),
                    mark.y(),
                    left,
                    top,
                    width,
                    new Words(Coordinates.round(left + width / 2), top + CLOTH_HEIGHT - 6.5, "middle", "label", text));
        }

        private void place(double x, double y, String anchor, String style, String text) {
            placed.add(new Words(Coordinates.round(x), Coordinates.round(y), anchor, style, text));
        }
    }
}

package rollbook.forecast;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import rollbook.burndown.Band;
import rollbook.burndown.DayRef;
import rollbook.burndown.PoolOutlook;
import rollbook.ordering.OrderAdvice;
import rollbook.web.Display;

/** A forecast in sentences, for pages, mail and reports. */
@Component
class StorageWords {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMMM", Locale.UK);
    private static final DateTimeFormatter SHORT_DAY = DateTimeFormatter.ofPattern("EEE d MMM", Locale.UK);
    /** More legs than this are counted rather than named: a sentence is read in one breath. */
    private static final int NAMED_AT_MOST = 2;

    private static final double LIKELY = 0.5;
    private static final double BAD_LUCK = 0.1;
    private static final double SMALLEST_TOLD = 0.01;

    private final Display display;

    StorageWords(Display display) {
        this.display = display;
    }

    /** The worst legs first; that the others last is said once. */
    String sentence(StorageForecast forecast) {
        List<LegForecast> running = Urgency.worstFirst(forecast).stream()
                .filter(leg -> leg.need() != OrderFlag.NONE)
                .toList();
        int lasting = forecast.legs().size() - running.size();
        StringBuilder sentence = new StringBuilder();
        if (isPlanOnly(forecast)) {
            sentence.append(display.text("forecast.sentence.plan-only")).append(' ');
        }
        if (running.isEmpty()) {
            sentence.append(display.text(
                    "forecast.sentence.all-last", lasting, date(forecast.endOfShow()), chance(worstRisk(forecast))));
            return sentence.toString();
        }
        running.stream()
                .limit(NAMED_AT_MOST)
                .forEach(leg -> sentence.append(sentence(leg, forecast)).append(' '));
        if (running.size() > NAMED_AT_MOST) {
            sentence.append(display.text("forecast.sentence.more", running.size() - NAMED_AT_MOST));
        } else if (lasting > 0) {
            sentence.append(display.text("forecast.sentence.rest-lasts", lasting));
        }
        return sentence.toString().strip();
    }

    /** Whether no day taught anything yet. */
    static boolean isPlanOnly(StorageForecast forecast) {
        return forecast.learned().units().stream().allMatch(unit -> unit.days() == 0);
    }

    private static double worstRisk(StorageForecast forecast) {
        return forecast.legs().stream()
                .mapToDouble(leg -> leg.outlook().chanceOfRunningOut())
                .max()
                .orElse(0);
    }

    String sentence(LegForecast leg, StorageForecast forecast) {
        return switch (leg.need()) {
            case NONE ->
                display.text(
                        "forecast.sentence.lasts",
                        leg.legName(),
                        chance(leg.outlook().chanceOfRunningOut()));
            case NO_HELP -> display.text("forecast.sentence.no-help", leg.legName(), runsOut(leg, forecast));
            case NO_SUPPLY -> display.text("forecast.sentence.no-supply", leg.legName(), runsOut(leg, forecast));
            case ORDER_BY ->
                display.text(
                        "forecast.sentence.order-by",
                        leg.legName(),
                        runsOut(leg, forecast),
                        items(leg),
                        date(order(leg).orderBy()));
            case LATE ->
                display.text(
                        "forecast.sentence.late",
                        leg.legName(),
                        runsOut(leg, forecast),
                        items(leg),
                        date(order(leg).likelyArrivalOn()));
        };
    }

    private static OrderAdvice.Order order(LegForecast leg) {
        return Objects.requireNonNull(leg.order());
    }

    /** The order flag in a few words. */
    String need(LegForecast leg) {
        return leg.need() == OrderFlag.ORDER_BY
                ? display.text("forecast.flag.ORDER_BY", shortDate(order(leg).orderBy()))
                : display.text("forecast.flag." + leg.need());
    }

    /** When the pool runs out, as part of a sentence. */
    String runsOut(LegForecast leg, StorageForecast forecast) {
        PoolOutlook pool = leg.outlook();
        LocalDate likely = pool.runsOutBy(LIKELY);
        LocalDate early = pool.runsOutBy(BAD_LUCK);
        if (!leg.hasMedia() && early != null) {
            return display.text("forecast.runs-out.no-media", day(early, forecast));
        }
        if (pool.causes().waiting() >= LIKELY) {
            return display.text("forecast.runs-out.waiting");
        }
        if (likely == null) {
            return early == null
                    ? display.text("forecast.runs-out.small", chance(pool.chanceOfRunningOut()))
                    : display.text("forecast.runs-out.early", day(early, forecast));
        }
        String hired = pool.causes().hiredItemLeaves() >= LIKELY ? ".hired" : "";
        return likely.equals(early)
                ? display.text("forecast.runs-out.likely" + hired, day(likely, forecast))
                : display.text("forecast.runs-out.between" + hired, day(likely, forecast), day(early, forecast));
    }

    /** What a leg's picture shows. */
    String picture(LegForecast leg) {
        PoolOutlook pool = leg.outlook();
        Band left = pool.points().isEmpty()
                ? Band.certain(pool.roomNowBytes())
                : pool.points().get(pool.points().size() - 1).leftBytes();
        LocalDate likely = pool.runsOutBy(LIKELY);
        return display.text(
                        "forecast.chart.description",
                        display.size(pool.roomNowBytes()),
                        display.size(Math.max(0, left.p50())),
                        display.size(Math.max(0, left.p10())),
                        display.size(Math.max(0, left.p90())))
                + (likely == null ? "" : " " + display.text("forecast.chart.description.full", date(likely)));
    }

    /** Day 17, Thu 12 March; the date alone if nothing is shot on it. */
    String day(LocalDate date, StorageForecast forecast) {
        return forecast.legs().stream()
                .flatMap(leg -> leg.outlook().points().stream())
                .filter(point -> point.date().equals(date))
                .flatMap(point -> point.days().stream())
                .findFirst()
                .map(day -> display.text("forecast.day-and-date", day(day, forecast), date(date)))
                .orElseGet(() -> date(date));
    }

    /** Day 17; with its unit where there is more than one. */
    String day(DayRef day, StorageForecast forecast) {
        boolean oneUnit = Stream.concat(
                                forecast.recording().points().stream()
                                        .map(point -> point.day().unit()),
                                forecast.learned().units().stream().map(unit -> unit.unit()))
                        .distinct()
                        .count()
                <= 1;
        return oneUnit
                ? display.text("forecast.day", day.number())
                : display.text("forecast.day.of-unit", day.unit(), day.number());
    }

    String items(LegForecast leg) {
        OrderAdvice.Order order = order(leg);
        return Objects.requireNonNull(leg.advice()).offer().packSize() == 1
                ? display.text("forecast.items", order.items())
                : display.text("forecast.items.packs", order.items(), order.packs());
    }

    /** 12 %; never quite nothing and never quite sure. */
    String chance(double chance) {
        if (chance < SMALLEST_TOLD) {
            return display.text("forecast.chance.under");
        }
        return chance > 1 - SMALLEST_TOLD ? display.text("forecast.chance.over") : display.percent(chance);
    }

    /** 4.1 TB, in eight of ten cases 3.6 TB to 5.0 TB. */
    String band(Band band) {
        return band.p10() == band.p90()
                ? display.amount(band.p50())
                : display.text(
                        "forecast.band", display.size(band.p50()), display.size(band.p10()), display.size(band.p90()));
    }

    /** Thu 12 March. */
    String date(LocalDate date) {
        return DAY.format(date);
    }

    /** Thu 12 Mar, for pictures. */
    String shortDate(LocalDate date) {
        return SHORT_DAY.format(date);
    }
}

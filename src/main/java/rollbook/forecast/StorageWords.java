package rollbook.forecast;

import java.math.BigDecimal;
import java.text.NumberFormat;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import org.springframework.stereotype.Component;
import rollbook.burndown.DayRef;
import rollbook.web.Display;

/** A forecast in sentences, for pages, mail and reports. */
@Component
class StorageWords {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMMM", Locale.UK);
    private static final DateTimeFormatter SHORT_DAY = DateTimeFormatter.ofPattern("EEE d MMM", Locale.UK);
    /** More legs than this are counted rather than named: a sentence is read in one breath. */
    private static final int NAMED_AT_MOST = 2;

    private final Display display;

    StorageWords(Display display) {
        this.display = display;
    }

    /** The worst legs first; that the others last is said once. */
    String sentence(StorageForecast forecast) {
        List<LegForecast> runningOut = Urgency.worstFirst(forecast).stream()
                .filter(leg -> !leg.lastsToTheEnd())
                .toList();
        int lasting = forecast.legs().size() - runningOut.size();
        if (runningOut.isEmpty()) {
            return display.text("forecast.sentence.all-last", lasting, date(forecast.endOfShow()));
        }
        StringBuilder sentence = new StringBuilder();
        runningOut.stream()
                .limit(NAMED_AT_MOST)
                .forEach(leg -> sentence.append(sentence(leg, forecast)).append(' '));
        if (runningOut.size() > NAMED_AT_MOST) {
            sentence.append(display.text("forecast.sentence.more", runningOut.size() - NAMED_AT_MOST));
        } else if (lasting > 0) {
            sentence.append(display.text("forecast.sentence.rest-lasts", lasting));
        }
        return sentence.toString().strip();
    }

    String sentence(LegForecast leg, StorageForecast forecast) {
        OrderProposal order = leg.order();
        return switch (leg.flag()) {
            case NONE -> display.text("forecast.sentence.lasts", leg.legName());
            case NO_SUPPLY -> display.text("forecast.sentence.no-supply", leg.legName(), full(leg, forecast));
            case ORDER_BY ->
                display.text(
                        "forecast.sentence.order-by",
                        leg.legName(),
                        full(leg, forecast),
                        items(order),
                        date(order.orderBy()));
            case LATE ->
                display.text(
                        "forecast.sentence.late",
                        leg.legName(),
                        full(leg, forecast),
                        items(order),
                        date(order.earliestArrival()));
        };
    }

    /** The order flag in a few words. */
    String flag(LegForecast leg) {
        return leg.flag() == OrderFlag.ORDER_BY
                ? display.text("forecast.flag.ORDER_BY", shortDate(leg.order().orderBy()))
                : display.text("forecast.flag." + leg.flag());
    }

    private String full(LegForecast leg, StorageForecast forecast) {
        RunOut runOut = leg.runOut();
        String day = runOut.day() == null
                ? date(runOut.date())
                : display.text("forecast.day-and-date", day(runOut.day(), forecast), date(runOut.date()));
        return leg.burnDown().capacityNowBytes() == 0
                ? display.text("forecast.full.NO_MEDIA", day)
                : display.text("forecast.full." + runOut.cause(), day);
    }

    /** Day 17; with its unit where there is more than one. */
    String day(DayRef day, StorageForecast forecast) {
        boolean oneUnit = forecast.legs().stream()
                        .flatMap(leg -> leg.burnDown().points().stream())
                        .flatMap(point -> point.days().stream())
                        .map(DayRef::unit)
                        .distinct()
                        .count()
                <= 1;
        return oneUnit
                ? display.text("forecast.day", day.number())
                : display.text("forecast.day.of-unit", day.unit(), day.number());
    }

    String items(OrderProposal order) {
        return order.supply().packSize() == 1
                ? display.text("forecast.items", order.items())
                : display.text("forecast.items.packs", order.items(), order.packs());
    }

    /** Thu 12 March. */
    String date(LocalDate date) {
        return DAY.format(date);
    }

    /** Thu 12 Mar, for pictures. */
    String shortDate(LocalDate date) {
        return SHORT_DAY.format(date);
    }

    static String money(BigDecimal amount, Currency currency) {
        NumberFormat format = NumberFormat.getCurrencyInstance(Locale.UK);
        format.setCurrency(currency);
        format.setMinimumFractionDigits(currency.getDefaultFractionDigits());
        format.setMaximumFractionDigits(currency.getDefaultFractionDigits());
        return format.format(amount);
    }
}

package rollbook.forecast;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.burndown.Band;
import rollbook.burndown.PoolOutlook;
import rollbook.ordering.OrderAdvice;
import rollbook.web.Display;

/** Draws how many shooting days the pools cover, and says it. */
@Component
class CoverPictures {
    private final Display display;
    private final StorageWords words;

    CoverPictures(Display display, StorageWords words) {
        this.display = display;
        this.words = words;
    }

    /** Empty when no day is to come any more. */
    Optional<CoverPicture> picture(StorageForecast forecast) {
        int daysToCome = forecast.legs().stream()
                .mapToInt(leg -> leg.outlook().daysToCome())
                .max()
                .orElse(0);
        if (daysToCome == 0) {
            return Optional.empty();
        }
        return Optional.of(new CoverPicture(
                daysToCome,
                CoverGauge.ticks(daysToCome).stream()
                        .map(tick -> CoverPicture.Label.of(tick.share(), Integer.toString(tick.days())))
                        .toList(),
                Urgency.worstFirst(forecast).stream().map(this::row).toList()));
    }

    /** When an order placed on the first possible day is likely there; null if nobody said how more can be had. */
    private static @Nullable LocalDate arrival(LegForecast leg) {
        OrderAdvice advice = leg.advice();
        return advice == null ? null : advice.waiting().get(0).likelyArrivalOn();
    }

    /** Shooting days until an order placed now is there; null if that isn't known or is after the show. */
    static @Nullable Integer leadDays(LegForecast leg) {
        LocalDate arrival = arrival(leg);
        if (arrival == null || isAfterTheShow(arrival, leg.outlook())) {
            return null;
        }
        return CoverGauge.daysUntil(arrival, leg.outlook());
    }

    private static boolean isAfterTheShow(LocalDate arrival, PoolOutlook pool) {
        return pool.points().isEmpty()
                || arrival.isAfter(pool.points().get(pool.points().size() - 1).date());
    }

    private CoverPicture.Row row(LegForecast leg) {
        PoolOutlook pool = leg.outlook();
        CoverGauge gauge = CoverGauge.of(pool.daysToCome(), pool.coverDays(), leadDays(leg));
        Double lead = gauge.lead();
        LocalDate arrival = arrival(leg);
        Band cover = pool.coverDays();
        return new CoverPicture.Row(
                leg.legName(),
                words.need(leg),
                leg.need() != OrderFlag.NONE,
                says(leg),
                CoverPicture.Bar.of(gauge),
                CoverPicture.Label.of(gauge.median(), covered(pool)),
                lead == null
                        ? null
                        : CoverPicture.Label.of(
                                lead,
                                display.text("forecast.gauge.lead", words.shortDate(Objects.requireNonNull(arrival)))),
                new CoverPicture.Cells(
                        display.count(cover.p50()),
                        display.count(cover.p10()),
                        display.count(cover.p90()),
                        arrival == null ? "" : words.date(arrival)));
    }

    private String covered(PoolOutlook pool) {
        return pool.coverDays().p50() >= pool.daysToCome()
                ? display.text("forecast.gauge.all", pool.daysToCome())
                : display.text("forecast.gauge.some", pool.coverDays().p50(), pool.daysToCome());
    }

    private String says(LegForecast leg) {
        PoolOutlook pool = leg.outlook();
        Band cover = pool.coverDays();
        String days = cover.p10() == cover.p90()
                ? display.text("forecast.cover", cover.p50(), pool.daysToCome())
                : display.text("forecast.cover.band", cover.p50(), cover.p10(), cover.p90(), pool.daysToCome());
        LocalDate arrival = arrival(leg);
        String order = arrival == null
                ? display.text("forecast.gauge.says.no-supply")
                : display.text("forecast.gauge.says.lead", words.date(arrival));
        return display.text("forecast.gauge.says", leg.legName(), days) + " " + order;
    }
}

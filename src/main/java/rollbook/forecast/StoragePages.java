package rollbook.forecast;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.production.Membership;
import rollbook.web.Display;
import rollbook.web.Link;

/** Lays a kept forecast out for the storage page. */
@Component
class StoragePages {
    private final StorageWords words;
    private final StorageFacts facts;
    private final BurnDownPictures pictures;
    private final Display display;

    StoragePages(StorageWords words, StorageFacts facts, BurnDownPictures pictures, Display display) {
        this.words = words;
        this.facts = facts;
        this.pictures = pictures;
        this.display = display;
    }

    StoragePage page(
            ForecastRun run,
            ForecastRun.Standing standing,
            Map<UUID, Map<LocalDate, Long>> roomOnPastDates,
            Membership membership) {
        StorageForecast forecast = run.results();
        return new StoragePage(
                Urgency.worstFirst(forecast).stream()
                        .map(leg -> leg.withBurnDown(
                                leg.burnDown().withPast(roomOnPastDates.getOrDefault(leg.legId(), Map.of()))))
                        .map(leg -> leg(leg, reduction(run.inputs(), leg.legId()), forecast))
                        .toList(),
                facts.ofShow(forecast),
                display.text("forecast.method." + forecast.methodId()),
                because(run),
                sources(run.inputs(), membership),
                standing.checkedAt(),
                run.computedAt().equals(standing.checkedAt()) ? null : run.computedAt(),
                standing.outdated());
    }

    private static @Nullable Reduction reduction(ForecastInput inputs, UUID legId) {
        return inputs.legs().stream()
                .filter(leg -> leg.id().equals(legId))
                .findFirst()
                .map(ForecastLeg::reduction)
                .orElse(null);
    }

    private StoragePage.Leg leg(LegForecast leg, @Nullable Reduction reduction, StorageForecast forecast) {
        return new StoragePage.Leg(
                leg.legId(),
                leg.legName(),
                words.sentence(leg, forecast),
                words.flag(leg),
                leg.flag(),
                leg.burnDown().capacityNowBytes() == 0,
                pictures.large(leg, forecast.endOfShow()),
                pictures.small(leg, forecast.endOfShow()),
                rows(leg, forecast),
                facts.ofLeg(leg, reduction));
    }

    List<StoragePage.Row> rows(LegForecast leg, StorageForecast forecast) {
        return leg.burnDown().points().stream()
                .map(point -> new StoragePage.Row(
                        point.date(),
                        point.date().isBefore(forecast.today()),
                        point.days().stream()
                                .map(day -> words.day(day, forecast))
                                .collect(Collectors.joining(", ")),
                        point))
                .toList();
    }

    private String because(ForecastRun run) {
        return display.text(
                "forecast.because",
                run.because().isEmpty()
                        ? display.text("forecast.because.UNKNOWN")
                        : run.because().stream()
                                .map(reason -> display.text("forecast.because." + reason))
                                .collect(Collectors.joining(", ")));
    }

    private List<Link> sources(ForecastInput inputs, Membership membership) {
        long items = inputs.legs().stream().mapToLong(leg -> leg.items().size()).sum();
        Link fillLevel = new Link(
                // Only who may change the level has a page for it.
                membership.path(membership.mayKeepBooks() ? "storage/fill-level" : "media"),
                display.text("forecast.source.fill-level", inputs.fillLevel().numerator()));
        return List.of(
                new Link(
                        membership.path("days"),
                        display.text("forecast.source.days", inputs.days().size())),
                new Link(membership.path("media"), display.text("forecast.source.media", items)),
                new Link(
                        membership.path("settings"),
                        display.text(
                                "forecast.source.copy-plan",
                                inputs.legs().size(),
                                inputs.calendar().holidays().size())),
                fillLevel);
    }
}

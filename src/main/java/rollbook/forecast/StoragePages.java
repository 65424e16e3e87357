package rollbook.forecast;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.burndown.PoolOutlook;
import rollbook.production.Membership;
import rollbook.purchase.OrderLine;
import rollbook.purchase.Orders;
import rollbook.purchase.PurchaseOrder;
import rollbook.web.Display;
import rollbook.web.Link;

/** Prepares the storage page: figures, sentences and pictures of one forecast, and what was done about it. */
@Component
class StoragePages {
    private final ForecastRuns runs;
    private final FlagActs flags;
    private final Orders orders;
    private final StorageWords words;
    private final LearnedWords learnedWords;
    private final OrderWords orderWords;
    private final FlagWords flagWords;
    private final StorageFacts facts;
    private final BurnDownPictures pictures;
    private final CoverPictures covers;
    private final Display display;

    StoragePages(
            ForecastRuns runs,
            FlagActs flags,
            Orders orders,
            StorageWords words,
            LearnedWords learnedWords,
            OrderWords orderWords,
            FlagWords flagWords,
            StorageFacts facts,
            BurnDownPictures pictures,
            CoverPictures covers,
            Display display) {
        this.runs = runs;
        this.flags = flags;
        this.orders = orders;
        this.words = words;
        this.learnedWords = learnedWords;
        this.orderWords = orderWords;
        this.flagWords = flagWords;
        this.facts = facts;
        this.pictures = pictures;
        this.covers = covers;
        this.display = display;
    }

    /** What was done about the pools, as it is now. */
    private record Done(Map<UUID, PoolFlag> flags, List<PurchaseOrder> orders) {}

    StoragePage page(ForecastRun run, ForecastRun.Standing standing, Membership membership) {
        UUID productionId = membership.productionId();
        StorageForecast forecast = run.results();
        Done done = new Done(flags.newestByLeg(productionId), orders.list(productionId));
        Map<UUID, BurnDown> burnDowns = burnDowns(run, productionId);
        Map<UUID, ForecastInput.Leg> inputs =
                run.inputs().legs().stream().collect(Collectors.toMap(ForecastInput.Leg::id, Function.identity()));
        return new StoragePage(
                covers.picture(forecast).orElse(null),
                Urgency.worstFirst(forecast).stream()
                        .map(leg ->
                                leg(leg, inputs.get(leg.legId()), burnDowns.get(leg.legId()), done, run, membership))
                        .toList(),
                orderWords.plan(forecast),
                learnedWords.sentences(
                        forecast, run.inputs(), runs.firstPlan(productionId).orElse(null)),
                display.text(
                        "forecast.method." + forecast.methodId(), run.inputs().replicates()),
                because(run),
                sources(run.inputs(), membership),
                standing.checkedAt(),
                run.computedAt().equals(standing.checkedAt()) ? null : run.computedAt(),
                standing.outdated(),
                standing.failure());
    }

    /** Of each leg, with what its room was on past dates. */
    Map<UUID, BurnDown> burnDowns(ForecastRun run, UUID productionId) {
        Map<UUID, Map<LocalDate, Long>> past =
                runs.roomOnPastDates(productionId, run.results().today());
        return run.results().legs().stream()
                .collect(Collectors.toMap(
                        LegForecast::legId,
                        leg -> BurnDown.of(run.inputs(), leg, past.getOrDefault(leg.legId(), Map.of()))));
    }

    private StoragePage.Leg leg(
            LegForecast leg,
            ForecastInput.Leg input,
            BurnDown burnDown,
            Done done,
            ForecastRun run,
            Membership membership) {
        StorageForecast forecast = run.results();
        return new StoragePage.Leg(
                leg.legId(),
                leg.legName(),
                words.sentence(leg, forecast),
                words.need(leg),
                leg.need(),
                !leg.hasMedia(),
                flag(done.flags().get(leg.legId()), membership),
                orderWords.why(leg),
                orderWords.waiting(leg),
                done.orders().stream().flatMap(order -> lines(order, leg)).toList(),
                pictures.large(leg, burnDown),
                pictures.small(leg, burnDown),
                rows(burnDown, forecast),
                facts.of(leg, input, run.inputs()));
    }

    private StoragePage.@Nullable FlagPart flag(@Nullable PoolFlag flag, Membership membership) {
        return flag == null || !flag.isOpen() ? null : flagWords.part(flag, membership.zone());
    }

    private Stream<StoragePage.OrderLine> lines(PurchaseOrder order, LegForecast leg) {
        return order.lines().stream()
                .filter(line -> leg.legId().equals(line.legId()) && line.capacityBytes() != null && line.left() > 0)
                .flatMap(line -> Stream.ofNullable(says(order, line)))
                .map(says -> new StoragePage.OrderLine(order.id(), says));
    }

    /** Null of what isn't to come any more. */
    private @Nullable String says(PurchaseOrder order, OrderLine line) {
        String items = display.text("forecast.items", line.left());
        String size = display.size(Objects.requireNonNull(line.capacityBytes()));
        return switch (order.state()) {
            case PROPOSED, APPROVED -> display.text("forecast.to-order." + order.state(), order.number(), items, size);
            case PLACED, PART_ARRIVED ->
                display.text(
                        "forecast.on-order",
                        items,
                        size,
                        words.date(Objects.requireNonNull(order.orderedOn())),
                        words.date(Objects.requireNonNull(order.expectedOn())),
                        order.number());
            case ARRIVED, CLOSED, DECLINED, CANCELLED -> null;
        };
    }

    private List<StoragePage.Row> rows(BurnDown burnDown, StorageForecast forecast) {
        return burnDown.points().stream().map(point -> row(point, forecast)).toList();
    }

    private StoragePage.Row row(BurnDown.Point point, StorageForecast forecast) {
        String days = point.days().stream().map(day -> words.day(day, forecast)).collect(Collectors.joining(", "));
        PoolOutlook.Point outlook = point.outlook();
        return outlook == null
                ? new StoragePage.Row(
                        words.shortDate(point.date()),
                        days,
                        some(point.plannedBytes()),
                        some(point.actualBytes()),
                        null,
                        null,
                        null,
                        point.pastLeftBytes(),
                        null,
                        null,
                        "")
                : new StoragePage.Row(
                        words.shortDate(point.date()),
                        days,
                        some(point.plannedBytes()),
                        some(point.actualBytes()),
                        some(outlook.demandBytes().p50()),
                        some(outlook.leavingBytes()),
                        some(outlook.returningBytes().p50()),
                        outlook.leftBytes().p50(),
                        outlook.leftBytes().p10(),
                        outlook.leftBytes().p90(),
                        words.chance(outlook.chanceOfHavingRunOut()));
    }

    private static @Nullable Long some(long bytes) {
        return bytes == 0 ? null : bytes;
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
        long items = inputs.legs().stream()
                .mapToLong(leg -> leg.pool().items().size())
                .sum();
        Link assumptions = new Link(
                // Only who may change the levels has a page for it.
                membership.path(membership.mayKeepBooks() ? "storage/assumptions" : "media"),
                display.text(
                        "forecast.source.assumptions",
                        inputs.fillLevel().numerator(),
                        Math.round(inputs.serviceLevel().chance() * 100)));
        return List.of(
                new Link(
                        membership.path("days"),
                        display.text("forecast.source.days", inputs.days().size())),
                new Link(membership.path("media"), display.text("forecast.source.media", items)),
                new Link(
                        membership.path("settings"),
                        display.text("forecast.source.copy-plan", inputs.legs().size())),
                assumptions,
                new Link(membership.path("storage/trust"), display.text("forecast.source.trust")));
    }
}

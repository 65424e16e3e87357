package rollbook.forecast;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.web.Display;

/** The figures of a forecast, each with what it is made of, for the page. */
@Component
class StorageFacts {
    private final Display display;
    private final StorageWords words;

    StorageFacts(Display display, StorageWords words) {
        this.display = display;
        this.words = words;
    }

    /** A name and a value, and the exact bytes behind the value if there are any. */
    record Fact(String name, String value, String exact) {}

    /** @param reduction what encoding leaves for this leg, if it is encoded */
    List<Fact> ofLeg(LegForecast leg, @Nullable Reduction reduction) {
        List<Fact> facts = new ArrayList<>();
        facts.add(bytes("forecast.fact.room", leg.roomNowBytes()));
        facts.add(fact("forecast.fact.cover", display.text("forecast.cover", leg.coverDays(), leg.daysToCome())));
        facts.add(bytes("forecast.fact.demand", leg.demandBytes()));
        if (reduction != null) {
            facts.add(fact("forecast.fact.kept", kept(reduction)));
        }
        addIfAny(facts, "forecast.fact.waiting", leg.waitingBytes());
        addIfAny(facts, "forecast.fact.returning", leg.returningBytes());
        addIfAny(facts, "forecast.fact.leaving", leg.leavingBytes());
        addIfAny(facts, "forecast.fact.shortfall", leg.shortfallBytes());
        if (leg.lastsToTheEnd()) {
            facts.add(bytes("forecast.fact.room-at-end", leg.roomAtEndBytes()));
        }
        if (leg.returnAfterDays() != null) {
            facts.add(fact("forecast.fact.comes-back", display.text("forecast.comes-back", leg.returnAfterDays())));
        }
        OrderProposal order = leg.order();
        if (order != null) {
            addOrder(facts, order);
        }
        return facts;
    }

    private String kept(Reduction reduction) {
        return display.text(
                reduction.isMeasured() ? "forecast.kept.measured" : "forecast.kept.planned",
                display.figure(reduction.share().value()),
                reduction.rolls(),
                display.figure(reduction.planned().value()),
                Reduction.ROLLS_NEEDED);
    }

    private void addOrder(List<Fact> facts, OrderProposal order) {
        facts.add(fact(
                "forecast.fact.order",
                display.text(
                        "forecast.order",
                        words.items(order),
                        display.size(order.capacityBytes()),
                        StorageWords.money(order.cost(), order.currency()))));
        facts.add(fact(
                "forecast.fact.order-dates",
                display.text(
                        "forecast.order-dates",
                        words.date(order.orderBy()),
                        words.date(order.arrivesBy()),
                        words.date(order.neededBy()),
                        words.date(order.earliestArrival()))));
        Supply supply = order.supply();
        facts.add(fact(
                "forecast.fact.supply",
                display.text(
                        "forecast.supply",
                        display.size(supply.itemCapacityBytes()),
                        supply.packSize(),
                        supply.leadTimeWorkingDays(),
                        supply.safetyWorkingDays())));
    }

    /** What all legs share: how the show has kept to its plan, and what is counted with. */
    List<Fact> ofShow(StorageForecast forecast) {
        List<Fact> facts = new ArrayList<>();
        PlanRatio ratio = forecast.ratio();
        if (ratio.isPlanOnly()) {
            facts.add(fact("forecast.fact.ratio", display.text("forecast.method.simple-ratio-1.plan-only")));
        } else {
            facts.add(new Fact(
                    display.text("forecast.fact.ratio"),
                    display.text(
                            "forecast.ratio",
                            display.figure(ratio.value()),
                            display.size(ratio.actualBytes()),
                            display.size(ratio.plannedBytes()),
                            ratio.wrappedDays()),
                    "%s / %s".formatted(display.exact(ratio.actualBytes()), display.exact(ratio.plannedBytes()))));
        }
        if (ratio.daysLeftOut() > 0) {
            facts.add(fact("forecast.fact.left-out", display.text("forecast.left-out", ratio.daysLeftOut())));
        }
        if (!forecast.overdueDays().isEmpty()) {
            facts.add(fact(
                    "forecast.fact.overdue-days",
                    forecast.overdueDays().stream()
                            .map(day -> display.text(
                                    "forecast.day-and-date", words.day(day, forecast), words.date(day.date())))
                            .collect(Collectors.joining("; "))));
        }
        return facts;
    }

    private void addIfAny(List<Fact> facts, String key, long bytes) {
        if (bytes > 0) {
            facts.add(bytes(key, bytes));
        }
    }

    private Fact bytes(String key, long bytes) {
        return new Fact(display.text(key), display.amount(bytes), display.exact(bytes));
    }

    private Fact fact(String key, String value) {
        return new Fact(display.text(key), value, "");
    }
}

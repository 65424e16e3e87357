package rollbook.forecast;

import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.ordering.Offer;
import rollbook.ordering.OrderAdvice;
import rollbook.ordering.PurchasePlan;
import rollbook.web.Display;

/** Why an order is advised: what runs out, why by this date, why so many, and what waiting costs. */
@Component
class OrderWords {
    private final Display display;
    private final StorageWords words;

    OrderWords(Display display, StorageWords words) {
        this.display = display;
        this.words = words;
    }

    /** A day on which the order could be placed. */
    record Waiting(String orderOn, String comesOn, String risk) {}

    /** Nothing without an order. */
    List<StorageFacts.Fact> why(LegForecast leg) {
        OrderAdvice.Order order = leg.order();
        if (order == null) {
            return List.of();
        }
        OrderAdvice advice = Objects.requireNonNull(leg.advice());
        Offer offer = advice.offer();
        List<StorageFacts.Fact> facts = new ArrayList<>();
        facts.add(fact(
                "forecast.fact.order",
                display.text(
                        "forecast.order",
                        words.items(leg),
                        display.size(order.capacityBytes()),
                        display.money(advice.cost(), offer.currency()))));
        facts.add(fact("forecast.fact.why-date", whyDate(advice, order)));
        facts.add(fact(
                "forecast.fact.why-number",
                display.text(
                        "forecast.why-number",
                        words.date(order.followingOrderOn()),
                        words.chance(order.riskOfTooLittle()),
                        words.chance(order.followingOrderChance()))));
        facts.add(fact(
                "forecast.fact.later",
                display.text(
                        "forecast.later",
                        advice.toTheEnd().p50() * offer.packSize(),
                        price(offer, advice.toTheEnd().p50()),
                        advice.toTheEnd().p90() * offer.packSize(),
                        price(offer, advice.toTheEnd().p90()))));
        facts.add(fact(
                "forecast.fact.risk",
                display.text(
                        "forecast.risk",
                        words.chance(advice.riskWithout()),
                        words.chance(advice.riskWith()),
                        words.chance(advice.level().allowedRisk()))));
        return facts;
    }

    private String price(Offer offer, long packs) {
        return display.money(packs * offer.packSize() * offer.itemPriceMinorUnits(), offer.currency());
    }

    private String whyDate(OrderAdvice advice, OrderAdvice.Order order) {
        String clock = display.clockTime(
                order.orderBefore(), advice.offer().supplier().days().zone());
        return display.text(
                order.late() ? "forecast.why-date.late" : "forecast.why-date",
                words.date(order.orderBy()),
                clock,
                words.date(order.likelyArrivalOn()),
                words.chance(order.riskUntilItComes()),
                words.chance(advice.allowedWhileWaiting()));
    }

    /** What each day of waiting costs. */
    List<Waiting> waiting(LegForecast leg) {
        OrderAdvice advice = leg.advice();
        return advice == null || advice.order() == null
                ? List.of()
                : advice.waiting().stream()
                        .map(day -> new Waiting(
                                words.date(day.orderOn()), words.date(day.likelyArrivalOn()), words.chance(day.risk())))
                        .toList();
    }

    /** Packs of an offer in a plan of all pools. */
    record PlanLine(String orderOn, String pool, long items, boolean hired, String cost) {}

    /** The plan of all pools, and what it costs. */
    record Plan(String sentence, List<PlanLine> lines) {}

    @Nullable
    Plan plan(StorageForecast forecast) {
        PurchasePlan plan = forecast.plan();
        if (plan == null || plan.lines().isEmpty()) {
            return null;
        }
        Currency currency = plan.lines().get(0).offer().currency();
        return new Plan(
                display.text("forecast.plan.sentence", display.money(plan.costMinorUnits(), currency))
                        + hireSaves(forecast, plan, currency),
                plan.lines().stream()
                        .map(line -> new PlanLine(
                                words.date(line.orderOn()),
                                line.offer().name(),
                                line.packs() * line.offer().packSize(),
                                line.hired(),
                                display.money(line.costMinorUnits(), currency)))
                        .toList());
    }

    private String hireSaves(StorageForecast forecast, PurchasePlan plan, Currency currency) {
        Long without = forecast.costWithoutHireMinorUnits();
        return without == null
                ? ""
                : " "
                        + display.text(
                                "forecast.plan.hire-saves", display.money(without - plan.costMinorUnits(), currency));
    }

    private StorageFacts.Fact fact(String key, String value) {
        return new StorageFacts.Fact(display.text(key), value, "");
    }
}

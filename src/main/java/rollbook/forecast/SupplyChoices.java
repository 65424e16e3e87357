package rollbook.forecast;

import java.time.Clock;
import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.production.Leg;
import rollbook.production.Membership;
import rollbook.production.Productions;
import rollbook.supplier.Market;
import rollbook.supplier.SupplyTerms;
import rollbook.web.Choice;
import rollbook.web.Display;

/** The catalogue items that a leg's pool can be filled up with. */
@Component
class SupplyChoices {
    private final Market market;
    private final Productions productions;
    private final Display display;
    private final Clock clock;

    SupplyChoices(Market market, Productions productions, Display display, Clock clock) {
        this.market = market;
        this.productions = productions;
        this.display = display;
        this.clock = clock;
    }

    /** @param chosen what is chosen now: that can be kept, though it may not be to be had any more; null for nothing */
    List<Choice> of(Membership membership, Leg leg, @Nullable LegSupply chosen) {
        LocalDate today = LocalDate.ofInstant(clock.instant(), membership.zone());
        Currency currency = Currency.getInstance(membership.currency());
        return market
                .terms(
                        membership.productionId(),
                        item -> item.details().kind() == leg.mediaKind()
                                && (!item.archived()
                                        || chosen != null && item.id().equals(chosen.itemId())),
                        market.calendar(productions.get(membership.productionId())),
                        today,
                        today)
                .values()
                .stream()
                .filter(SupplyTerms::fillsPools)
                .map(terms -> new Choice(terms.item().id().toString(), text(terms, currency)))
                .toList();
    }

    private String text(SupplyTerms terms, Currency currency) {
        return display.text(
                "forecast.supply.choice",
                terms.supplier().name(),
                terms.item().details().model(),
                display.size(terms.item().details().capacityBytes()),
                display.money(Objects.requireNonNull(terms.price().itemMinorUnits()), currency),
                terms.item().details().packSize());
    }
}

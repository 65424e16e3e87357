package rollbook.mail;

import java.time.Clock;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Component;
import rollbook.cost.CostSentences;
import rollbook.forecast.Forecasts;
import rollbook.inventory.HireReturns;
import rollbook.post.PostStandings;
import rollbook.production.Alarm;
import rollbook.production.AlarmSource;
import rollbook.production.Membership;
import rollbook.purchase.Orders;
import rollbook.schedule.ShootingDays;
import rollbook.verification.ProofSummaries;
import rollbook.verification.Rechecks;

/** Finds out how a production stands, in a number of statements that doesn't grow with it. */
@Component
class FactFinder {
    private final ProofSummaries proofs;
    private final PostStandings post;
    private final Forecasts forecasts;
    private final Orders orders;
    private final HireReturns hires;
    private final Rechecks rechecks;
    private final CostSentences costs;
    private final ShootingDays days;
    private final List<AlarmSource> sources;
    private final Clock clock;

    FactFinder(
            ProofSummaries proofs,
            PostStandings post,
            Forecasts forecasts,
            Orders orders,
            HireReturns hires,
            Rechecks rechecks,
            CostSentences costs,
            ShootingDays days,
            List<AlarmSource> sources,
            Clock clock) {
        this.proofs = proofs;
        this.post = post;
        this.forecasts = forecasts;
        this.orders = orders;
        this.hires = hires;
        this.rechecks = rechecks;
        this.costs = costs;
        this.days = days;
        this.sources = sources;
        this.clock = clock;
    }

    /** @param anyone of the production */
    Facts facts(Membership anyone) {
        UUID production = anyone.productionId();
        return new Facts(
                LocalDate.ofInstant(clock.instant(), anyone.zone()),
                proofs.of(production),
                post.of(production),
                forecasts.latest(production).orElse(null),
                orders(production),
                hires.of(production),
                rechecks.pressing(anyone),
                costs.of(anyone),
                alarms(production),
                days.list(production).stream().filter(day -> day.state().open()).toList());
    }

    private List<Facts.Ordered> orders(UUID productionId) {
        return orders.list(productionId).stream()
                .filter(order -> order.isOpen() || order.isAwaited())
                .map(order -> new Facts.Ordered(
                        order.number(),
                        order.supplierName(),
                        order.state(),
                        order.items(),
                        order.left(),
                        order.expectedOn(),
                        "orders/" + order.id()))
                .sorted(Comparator.comparing(Facts.Ordered::expectedOn, Comparator.nullsLast(Comparator.naturalOrder()))
                        .thenComparing(Facts.Ordered::number))
                .toList();
    }

    /** What stands, the oldest first. */
    List<Alarm> alarms(UUID productionId) {
        return sources.stream()
                .flatMap(source -> source.alarms(productionId).stream())
                .sorted(Comparator.comparing(Alarm::since).thenComparing(Alarm::key))
                .toList();
    }
}

package rollbook.mail;

import java.time.Clock;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import rollbook.forecast.Forecasts;
import rollbook.inventory.HireReturns;
import rollbook.production.Alarm;
import rollbook.production.AlarmSource;
import rollbook.production.Membership;
import rollbook.purchase.Orders;
import rollbook.purchase.PurchaseOrder;
import rollbook.schedule.ShootingDays;
import rollbook.verification.ProofSummaries;
import rollbook.verification.Rechecks;

/** Finds out how a production stands, in a number of statements that doesn't grow with it. */
@Component
class FactFinder {
    private final ProofSummaries proofs;
    private final Forecasts forecasts;
    private final Orders orders;
    private final HireReturns hires;
    private final Rechecks rechecks;
    private final ShootingDays days;
    private final List<AlarmSource> sources;
    private final Clock clock;

    FactFinder(
            ProofSummaries proofs,
            Forecasts forecasts,
            Orders orders,
            HireReturns hires,
            Rechecks rechecks,
            ShootingDays days,
            List<AlarmSource> sources,
            Clock clock) {
        this.proofs = proofs;
        this.forecasts = forecasts;
        this.orders = orders;
        this.hires = hires;
        this.rechecks = rechecks;
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
                forecasts.latest(production).orElse(null),
                orders.expected(production).stream()
                        .flatMap(FactFinder::arrivals)
                        .toList(),
                hires.of(production),
                rechecks.pressing(anyone),
                alarms(production),
                days.list(production).stream().filter(day -> day.state().open()).toList());
    }

    private static Stream<Facts.Arrival> arrivals(PurchaseOrder order) {
        return order.lines().stream()
                .filter(line -> line.left() > 0)
                .map(line -> new Facts.Arrival(
                        line.left(), line.model(), Objects.requireNonNull(order.expectedOn()), "orders/" + order.id()));
    }

    /** What stands, the oldest first. */
    List<Alarm> alarms(UUID productionId) {
        return sources.stream()
                .flatMap(source -> source.alarms(productionId).stream())
                .sorted(Comparator.comparing(Alarm::since).thenComparing(Alarm::key))
                .toList();
    }
}

package rollbook.hire;

import java.math.BigDecimal;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.hire.Candidates.Model;
import rollbook.label.CodeList;
import rollbook.ordering.Hire;
import rollbook.production.Membership;
import rollbook.quantity.Money;
import rollbook.supplier.Catalogue;
import rollbook.supplier.CatalogueItem;
import rollbook.supplier.MediaSupplier;
import rollbook.supplier.Price;
import rollbook.supplier.Suppliers;

/** What the forms of an agreement begin with, and which items they may name. */
@Component
class AgreementForms {
    private final Hires hires;
    private final Suppliers suppliers;
    private final Catalogue catalogue;
    private final Clock clock;

    AgreementForms(Hires hires, Suppliers suppliers, Catalogue catalogue, Clock clock) {
        this.hires = hires;
        this.suppliers = suppliers;
        this.catalogue = catalogue;
        this.clock = clock;
    }

    List<MediaSupplier> suppliers(Membership membership) {
        return suppliers.list(membership.productionId());
    }

    /** For a new agreement: what is hired and under none. */
    Candidates free(Membership membership) {
        return new Candidates(all(membership).stream()
                .filter(hired -> hired.isHere() && hired.item().agreementId() == null)
                .toList());
    }

    /** For a correction: what the newest entry may name. What has ended under it stays in it. */
    Candidates correctable(Membership membership, HireAgreement agreement) {
        boolean extended = agreement.terms().extensions() > 0;
        return new Candidates(all(membership).stream()
                .filter(hired -> agreement.id().equals(hired.item().agreementId())
                        || !extended && hired.isHere() && hired.item().agreementId() == null)
                .filter(hired -> hired.isHere() || inNewest(agreement, hired))
                .toList());
    }

    /** For an extension: what is here. */
    Candidates extendable(Membership membership, HireAgreement agreement) {
        return new Candidates(HirePages.under(all(membership), agreement.id()).stream()
                .filter(Hired::isHere)
                .toList());
    }

    /** What a correction needn't name, because it has ended. */
    static List<Hired> ended(Candidates candidates) {
        return candidates.items().stream().filter(hired -> !hired.isHere()).toList();
    }

    /** Begins with what is known of the items that came with this one, and with the supplier's own prices. */
    AgreementForm blank(Membership membership, Candidates free, @Nullable UUID item) {
        List<Hired> together = HirePages.groups(free.items()).stream()
                .filter(group ->
                        group.stream().anyMatch(hired -> hired.item().id().equals(item)))
                .findFirst()
                .orElse(List.of());
        LocalDate today = LocalDate.now(clock.withZone(membership.zone()));
        LocalDate start = together.stream()
                .map(Hired::since)
                .min(Comparator.naturalOrder())
                .orElse(today);
        MediaSupplier supplier = together.isEmpty()
                ? null
                : suppliers(membership).stream()
                        .filter(candidate -> candidate
                                .name()
                                .equalsIgnoreCase(together.get(0).item().supplier()))
                        .findFirst()
                        .orElse(null);
        List<CatalogueItem> offered = supplier == null
                ? List.of()
                : catalogue.list(membership.productionId()).stream()
                        .filter(offer -> offer.supplierId().equals(supplier.id()))
                        .toList();
        Money money = Money.of(membership.currency());
        return new AgreementForm(
                supplier == null ? null : supplier.id(),
                "",
                start,
                together.isEmpty() ? null : together.get(0).dueOn(),
                together.stream()
                        .flatMap(hired -> hire(offered, hired.item(), start).stream())
                        .map(Hire::minimumWeeks)
                        .max(Comparator.naturalOrder())
                        .orElse(1),
                null,
                codes(together),
                models(
                        free,
                        money,
                        hired -> hire(offered, hired.item(), start)
                                .map(Hire::weeklyRateMinorUnits)
                                .orElse(hired.item().weekMinorUnits())),
                "",
                0);
    }

    private static Optional<Hire> hire(List<CatalogueItem> offered, HiredItem item, LocalDate on) {
        return offered.stream()
                .filter(offer -> offer.details().kind() == item.kind()
                        && offer.details().model().equalsIgnoreCase(item.model()))
                .flatMap(offer -> offer.prices().on(on).stream())
                .map(Price::hire)
                .filter(Objects::nonNull)
                .findFirst();
    }

    AgreementForm correction(Membership membership, HireAgreement agreement, Candidates candidates) {
        TermsEntry newest = agreement.terms().newest();
        Money money = Money.of(membership.currency());
        return new AgreementForm(
                newest.supplierId(),
                newest.reference(),
                newest.startedOn(),
                newest.dueOn(),
                newest.minimumWeeks(),
                newest.lateDayMinorUnits() == null ? null : money.amount(newest.lateDayMinorUnits()),
                codes(candidates.items().stream()
                        .filter(hired -> hired.isHere() && inNewest(agreement, hired))
                        .toList()),
                models(candidates, money, hired -> rate(newest, hired)),
                newest.note(),
                agreement.entries());
    }

    ExtensionForm extension(Membership membership, HireAgreement agreement, Candidates candidates) {
        return new ExtensionForm(
                agreement.terms().newest().dueOn().plusWeeks(1),
                codes(candidates.items()),
                models(candidates, Money.of(membership.currency()), Hired::weekMinorUnits),
                "",
                agreement.entries());
    }

    private List<Hired> all(Membership membership) {
        return hires.all(membership.productionId(), membership.zone());
    }

    private static boolean inNewest(HireAgreement agreement, Hired hired) {
        return agreement
                .terms()
                .newest()
                .weekMinorUnits()
                .containsKey(hired.item().id());
    }

    private static @Nullable Long rate(TermsEntry entry, Hired hired) {
        Map<UUID, Long> rates = entry.weekMinorUnits();
        return rates.getOrDefault(hired.item().id(), hired.weekMinorUnits());
    }

    private static List<ModelForm> models(Candidates candidates, Money money, Function<Hired, @Nullable Long> rate) {
        return candidates.models().stream()
                .map(model -> new ModelForm(model.like(), amount(model, money, rate)))
                .toList();
    }

    private static @Nullable BigDecimal amount(Model model, Money money, Function<Hired, @Nullable Long> rate) {
        return model.items().stream()
                .map(rate)
                .filter(Objects::nonNull)
                .findFirst()
                .map(money::amount)
                .orElse(null);
    }

    private static String codes(List<Hired> items) {
        return CodeList.write(items.stream().map(hired -> hired.item().code()).toList());
    }
}

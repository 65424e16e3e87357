package rollbook.hire;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rollbook.hire.HireTerms.Period;

/**
 * An item with all that is known of its hire. Without an agreement that is what the inventory says: it began when the item
 * came with its order, or else was registered, and one week is paid for at least.
 *
 * @param agreement under which it is hired, or was when it left
 * @param end what its hire came to, once it has ended
 * @param since when it came, or was registered, in the production's zone
 */
record Hired(
        HiredItem item,
        @Nullable HireAgreement agreement,
        @Nullable HireEnd end,
        LocalDate since) {

    /** Whether it has yet to go back. */
    boolean isHere() {
        return item.isHere();
    }

    public String supplier() {
        return agreement == null ? item.supplier() : agreement.supplier();
    }

    public String agreementCode() {
        return agreement == null ? "" : agreement.code();
    }

    LocalDate startedOn() {
        return agreed().map(HireTerms::startedOn).orElse(since);
    }

    /** Null if nobody knows. */
    @Nullable
    LocalDate dueOn() {
        return agreed().map(HireTerms::dueOn).orElse(item.hiredUntil());
    }

    /** Null if nobody knows. */
    @Nullable
    Long weekMinorUnits() {
        return agreed().map(HireTerms::weekMinorUnits).orElse(item.weekMinorUnits());
    }

    boolean isOverdue(LocalDate today) {
        LocalDate due = dueOn();
        return isHere() && due != null && due.isBefore(today);
    }

    /** Whether it has to go back within so many days, or on that very day. */
    boolean isDueWithin(int days, LocalDate today) {
        LocalDate due = dueOn();
        return isHere() && due != null && !due.isBefore(today) && !due.isAfter(today.plusDays(days));
    }

    /** As agreed, or as far as the inventory knows; empty if nobody knows what a week costs. */
    Optional<HireTerms> terms() {
        return agreed().or(() -> Optional.ofNullable(item.weekMinorUnits()).map(this::asFarAsKnown));
    }

    /** What it comes to if it goes back on a date; empty if nobody knows what a week costs. */
    Optional<HireCost> ifReturnedOn(LocalDate date) {
        return terms().map(terms -> HireCost.ifReturnedOn(date, dueOn() == null ? until(terms, date) : terms));
    }

    /** What it comes to by its due date, or by another date if none is known or that is later. */
    Optional<HireCost> committed(LocalDate date) {
        LocalDate due = dueOn();
        return ifReturnedOn(due == null || due.isBefore(date) ? date : due);
    }

    private Optional<HireTerms> agreed() {
        return agreement == null ? Optional.empty() : agreement.terms().of(item.id());
    }

    private HireTerms asFarAsKnown(long weekMinorUnits) {
        LocalDate until = item.hiredUntil();
        LocalDate due = until == null || until.isBefore(since) ? since : until;
        return new HireTerms(since, 1, null, List.of(new Period(due, weekMinorUnits)));
    }

    /** What has no due date is never late. */
    private static HireTerms until(HireTerms terms, LocalDate date) {
        LocalDate due = date.isBefore(terms.startedOn()) ? terms.startedOn() : date;
        return new HireTerms(
                terms.startedOn(), terms.minimumWeeks(), null, List.of(new Period(due, terms.weekMinorUnits())));
    }
}

package rollbook.hire;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import rollbook.hire.HireTerms.Period;

/**
 * All that was entered about an agreement, and what of it is in force: as agreed, and each extension. A correction stands in
 * the place of the newest of them; taking back removes it. Supplier, start, minimum and late rate are as the newest says.
 *
 * @param entered in order, at least one
 */
record TermsHistory(List<TermsEntry> entered) {
    TermsHistory {
        entered = List.copyOf(entered);
    }

    /** As agreed and each extension; empty if all was taken back. */
    List<TermsEntry> inForce() {
        List<TermsEntry> inForce = new ArrayList<>();
        for (TermsEntry entry : entered) {
            switch (entry.act()) {
                case AGREED, EXTENDED -> inForce.add(entry);
                case CORRECTED -> inForce.set(inForce.size() - 1, entry);
                case TAKEN_BACK -> inForce.remove(inForce.size() - 1);
            }
        }
        return inForce;
    }

    public boolean isWithdrawn() {
        return inForce().isEmpty();
    }

    /** How many times it is extended. */
    public int extensions() {
        return Math.max(0, inForce().size() - 1);
    }

    /** The one that counts; of an agreement that was taken back, the last one that was entered. */
    public TermsEntry newest() {
        List<TermsEntry> inForce = inForce();
        return inForce.isEmpty() ? entered.get(entered.size() - 1) : inForce.get(inForce.size() - 1);
    }

    /** What an item's due date was before the newest entry in force; the start if that is the first. */
    Optional<TermsEntry> beforeNewest() {
        List<TermsEntry> inForce = inForce();
        return inForce.size() < 2 ? Optional.empty() : Optional.of(inForce.get(inForce.size() - 2));
    }

    /** The terms of an item; empty if the agreement isn't about it. */
    Optional<HireTerms> of(UUID itemId) {
        List<Period> periods = inForce().stream()
                .filter(entry -> entry.weekMinorUnits().containsKey(itemId))
                .map(entry -> new Period(entry.dueOn(), entry.weekMinorUnits().get(itemId)))
                .toList();
        TermsEntry newest = newest();
        return periods.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        new HireTerms(newest.startedOn(), newest.minimumWeeks(), newest.lateDayMinorUnits(), periods));
    }
}

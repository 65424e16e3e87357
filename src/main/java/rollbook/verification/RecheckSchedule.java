package rollbook.verification;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import rollbook.production.MediaKind;

/**
 * Which media must be read again by when: a pure function of when each copy was last found good, of the plan, and of
 * today's date. No standard prescribes an interval; the plan is the production's own.
 */
final class RecheckSchedule {
    /** So many days before a check is overdue it is said to be due, so that it can be fitted in. */
    static final int NOTICE_DAYS = 7;

    private RecheckSchedule() {}

    /** How pressing a re-check is, most pressing first. */
    enum State {
        OVERDUE,
        DUE,
        LATER
    }

    /** @param checkedOn when the copy was last found equal to its reference */
    record CheckedCopy(
            UUID itemId, String itemCode, MediaKind kind, String placeName, String rollCode, LocalDate checkedOn) {}

    /**
     * A medium that must be read again.
     *
     * @param checkedOn the oldest last check among its copies
     * @param dueOn by when that one must be checked
     * @param days until then; negative when it is late
     * @param rollCodes the rolls on it that are due or overdue; of a medium for later, those that are first
     */
    record Due(
            UUID itemId,
            String itemCode,
            MediaKind kind,
            String placeName,
            LocalDate checkedOn,
            LocalDate dueOn,
            State state,
            long days,
            List<String> rollCodes) {}

    /** The media with planned re-checks, the most pressing first. */
    static List<Due> of(Collection<CheckedCopy> copies, RecheckPlan plan, LocalDate today) {
        Map<UUID, List<CheckedCopy>> byItem = new LinkedHashMap<>();
        copies.stream()
                .filter(copy -> plan.days(copy.kind()) != null)
                .forEach(copy -> byItem.computeIfAbsent(copy.itemId(), item -> new ArrayList<>())
                        .add(copy));
        return byItem.values().stream()
                .map(onItem -> due(onItem, plan, today))
                .sorted(Comparator.comparing(Due::dueOn).thenComparing(Due::itemCode))
                .toList();
    }

    private static Due due(List<CheckedCopy> onItem, RecheckPlan plan, LocalDate today) {
        CheckedCopy oldest = onItem.stream()
                .min(Comparator.comparing(CheckedCopy::checkedOn))
                .orElseThrow();
        LocalDate dueOn = dueOn(oldest, plan);
        LocalDate upTo = today.plusDays(NOTICE_DAYS).isBefore(dueOn) ? dueOn : today.plusDays(NOTICE_DAYS);
        List<String> rolls = onItem.stream()
                .filter(copy -> !dueOn(copy, plan).isAfter(upTo))
                .map(CheckedCopy::rollCode)
                .distinct()
                .sorted()
                .toList();
        return new Due(
                oldest.itemId(),
                oldest.itemCode(),
                oldest.kind(),
                oldest.placeName(),
                oldest.checkedOn(),
                dueOn,
                state(dueOn, today),
                ChronoUnit.DAYS.between(today, dueOn),
                rolls);
    }

    private static LocalDate dueOn(CheckedCopy copy, RecheckPlan plan) {
        Integer days = plan.days(copy.kind());
        if (days == null) {
            throw new IllegalArgumentException("No re-checks are planned for " + copy.kind());
        }
        return copy.checkedOn().plusDays(days);
    }

    private static State state(LocalDate dueOn, LocalDate today) {
        if (dueOn.isBefore(today)) {
            return State.OVERDUE;
        }
        return dueOn.isAfter(today.plusDays(NOTICE_DAYS)) ? State.LATER : State.DUE;
    }
}

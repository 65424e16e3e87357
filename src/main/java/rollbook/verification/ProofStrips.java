package rollbook.verification;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.Verdict;
import rollbook.production.Leg;

/**
 * Which rolls of each day are proven on which leg of the copy plan: a row a day, a strip of marks a leg, a mark a roll. The
 * marks of a roll stand at the same place in each strip.
 *
 * @param days as they were given
 */
record ProofStrips(List<Leg> legs, List<Day> days) {

    /** What a roll has on a leg, of several copies the best, in this order. */
    enum Mark {
        PROVEN,
        CONSISTENT,
        SIZE_ONLY,
        INCOMPLETE,
        FAILED,
        UNKNOWN,
        /** There was a copy, and its medium was erased since. */
        ERASED,
        NO_COPY
    }

    /**
     * A copy of a roll for a leg; one without leg and verdict of a roll that has none.
     *
     * @param verdict the newest; null if nobody has judged the copy
     */
    record CopyFact(
            UUID rollId,
            UUID dayId,
            int dayNumber,
            String unitName,
            LocalDate date,
            @Nullable UUID legId,
            boolean erased,
            @Nullable Verdict verdict) {

        Mark mark() {
            return erased ? Mark.ERASED : verdict == null ? Mark.UNKNOWN : Mark.valueOf(verdict.name());
        }
    }

    /** @param strips one for each leg, in the plan's order */
    record Day(UUID id, int number, String unitName, LocalDate date, List<Strip> strips) {

        /** Whether nothing is left to prove: every copy is proven, or its medium came back into use as planned. */
        boolean isSettled() {
            return strips.stream().allMatch(Strip::isSettled);
        }
    }

    /** @param returns whether the leg's media come back into use, so that an erased copy is as it should be */
    record Strip(boolean returns, List<Mark> marks) {
        long count(Mark mark) {
            return marks.stream().filter(mark::equals).count();
        }

        boolean isSettled() {
            return marks.stream().allMatch(mark -> mark == Mark.PROVEN || returns && mark == Mark.ERASED);
        }

        /** How many rolls have which mark, proven ones first. */
        Map<Mark, Long> counts() {
            return marks.stream()
                    .collect(Collectors.groupingBy(
                            Function.identity(), () -> new EnumMap<>(Mark.class), Collectors.counting()));
        }
    }

    /** @param facts in the order in which days and rolls are to stand */
    static ProofStrips of(List<Leg> legs, List<CopyFact> facts) {
        Map<UUID, List<CopyFact>> byDay = new LinkedHashMap<>();
        facts.forEach(fact ->
                byDay.computeIfAbsent(fact.dayId(), id -> new ArrayList<>()).add(fact));
        return new ProofStrips(
                legs, byDay.values().stream().map(day -> day(legs, day)).toList());
    }

    private static Day day(List<Leg> legs, List<CopyFact> facts) {
        List<UUID> rolls = facts.stream().map(CopyFact::rollId).distinct().toList();
        CopyFact first = facts.get(0);
        return new Day(
                first.dayId(),
                first.dayNumber(),
                first.unitName(),
                first.date(),
                legs.stream().map(leg -> strip(leg, rolls, facts)).toList());
    }

    private static Strip strip(Leg leg, List<UUID> rolls, List<CopyFact> facts) {
        Map<UUID, Mark> best = new HashMap<>();
        facts.stream()
                .filter(fact -> leg.id().equals(fact.legId()))
                .forEach(fact -> best.merge(
                        fact.rollId(), fact.mark(), (one, other) -> one.compareTo(other) <= 0 ? one : other));
        return new Strip(
                leg.returnsAfterDays() != null,
                rolls.stream()
                        .map(roll -> best.getOrDefault(roll, Mark.NO_COPY))
                        .toList());
    }

    /** Rolls that are proven on a leg, of all days. */
    long proven(int leg) {
        return days.stream()
                .mapToLong(day -> day.strips().get(leg).count(Mark.PROVEN))
                .sum();
    }

    long rolls() {
        return days.stream()
                .mapToLong(day ->
                        day.strips().isEmpty() ? 0 : day.strips().get(0).marks().size())
                .sum();
    }
}

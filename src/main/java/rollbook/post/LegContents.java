package rollbook.post;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rollbook.inventory.Condition;
import rollbook.manifest.Verdict;
import rollbook.offload.Copy;
import rollbook.offload.Roll;
import rollbook.production.Leg;
import rollbook.production.MediaKind;
import rollbook.verification.CopyStandings.Standings;

/**
 * What lies on the media of a kept leg.
 *
 * @param rolls all that were pulled from a camera, by their days' dates and their codes
 */
record LegContents(Leg leg, List<OnLeg> rolls) {

    /** @param copies on the leg's media; more than one if it was written twice */
    record OnLeg(Roll roll, List<Held> copies) {
        boolean isProven() {
            return copies.stream().anyMatch(Held::proven);
        }

        boolean isMissing() {
            return copies.isEmpty();
        }
    }

    /** A copy on a medium of the leg. */
    record Held(UUID itemId, String itemCode, MediaKind itemKind, String placeName, Verdict verdict, boolean proven) {}

    /**
     * A medium of the leg.
     *
     * @param proven how many of its rolls are proven on it
     */
    record Medium(
            UUID itemId,
            String itemCode,
            MediaKind kind,
            String placeName,
            int rolls,
            int proven,
            Day first,
            Day last) {}

    /** A shooting day of a unit. */
    record Day(UUID id, int number, String unitName, LocalDate date) {
        static final Comparator<Day> BY_DATE =
                Comparator.comparing(Day::date).thenComparing(Day::unitName).thenComparing(Day::number);

        static Day of(Roll roll) {
            return new Day(roll.dayId(), roll.dayNumber(), roll.unitName(), roll.dayDate());
        }
    }

    static LegContents of(Leg leg, List<Roll> rolls, List<Copy> copies, Standings standings) {
        Map<UUID, List<Held>> byRoll = copies.stream()
                .filter(copy -> leg.id().equals(copy.legId()) && !copy.isErased() && isHere(copy.itemCondition()))
                .collect(Collectors.groupingBy(
                        Copy::rollId,
                        Collectors.mapping(
                                copy -> new Held(
                                        copy.itemId(),
                                        copy.itemCode(),
                                        copy.itemKind(),
                                        copy.placeName(),
                                        standings.of(copy).verdict(),
                                        standings.of(copy).proven()),
                                Collectors.toList())));
        return new LegContents(
                leg,
                rolls.stream()
                        .filter(roll -> roll.pulledAt() != null)
                        .sorted(Comparator.comparing(Day::of, Day.BY_DATE).thenComparing(Roll::code))
                        .map(roll -> new OnLeg(roll, byRoll.getOrDefault(roll.id(), List.of())))
                        .toList());
    }

    private static boolean isHere(Condition condition) {
        return condition == Condition.GOOD || condition == Condition.QUARANTINED;
    }

    /** The days of which there is a roll, in the order of their dates. */
    List<Day> days() {
        return rolls.stream().map(roll -> Day.of(roll.roll())).distinct().toList();
    }

    /** What was shot up to the end of a date. */
    LegContents upTo(LocalDate date) {
        return new LegContents(
                leg,
                rolls.stream()
                        .filter(roll -> !roll.roll().dayDate().isAfter(date))
                        .toList());
    }

    /** Rolls that are on none of the leg's media, or aren't proven there. */
    public List<OnLeg> gaps() {
        return rolls.stream().filter(roll -> !roll.isProven()).toList();
    }

    /** The last day up to whose date every roll is proven on the leg; null if there is none. */
    @Nullable
    Day completeUpTo() {
        LocalDate firstGap = gaps().isEmpty() ? null : gaps().get(0).roll().dayDate();
        return days().stream()
                .filter(day -> firstGap == null || day.date().isBefore(firstGap))
                .reduce((earlier, later) -> later)
                .orElse(null);
    }

    /** The leg's media with something on them, by their codes. */
    public List<Medium> media() {
        Map<UUID, List<OnLeg>> byItem = new LinkedHashMap<>();
        Map<UUID, Held> any = new LinkedHashMap<>();
        for (OnLeg roll : rolls) {
            for (Held held : roll.copies()) {
                any.putIfAbsent(held.itemId(), held);
                byItem.computeIfAbsent(held.itemId(), item -> new ArrayList<>()).add(roll);
            }
        }
        return byItem.entrySet().stream()
                .map(item -> medium(any.get(item.getKey()), item.getValue()))
                .sorted(Comparator.comparing(Medium::itemCode))
                .toList();
    }

    private static Medium medium(Held any, List<OnLeg> rolls) {
        List<Day> days =
                rolls.stream().map(roll -> Day.of(roll.roll())).distinct().toList();
        int proven = (int) rolls.stream()
                .flatMap(roll -> roll.copies().stream())
                .filter(held -> held.itemId().equals(any.itemId()) && held.proven())
                .count();
        return new Medium(
                any.itemId(),
                any.itemCode(),
                any.itemKind(),
                any.placeName(),
                rolls.size(),
                proven,
                days.get(0),
                days.get(days.size() - 1));
    }
}

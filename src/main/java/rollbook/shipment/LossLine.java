package rollbook.shipment;

import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import rollbook.inventory.Condition;
import rollbook.verification.RollCopies;
import rollbook.verification.RollCopies.CopyAt;

/**
 * What is left of a roll without some items.
 *
 * @param on codes of those of the items that it is on
 * @param proven its proven copies elsewhere
 * @param unproven its other copies elsewhere, which may be all that there is
 */
record LossLine(
        UUID rollId,
        String rollCode,
        Left left,
        String cardCode,
        List<String> on,
        List<CopyAt> proven,
        List<CopyAt> unproven) {
    /** How much is left, the worst first. */
    enum Left {
        NOTHING,
        UNPROVEN_COPIES,
        CARD,
        ONE_COPY,
        SEVERAL_COPIES
    }

    /** Of every roll on the items, the worst first. */
    static List<LossLine> of(Set<UUID> items, List<RollCopies> rolls) {
        return rolls.stream()
                .map(roll -> line(items, roll))
                .sorted(Comparator.comparing(LossLine::left).thenComparing(LossLine::rollCode))
                .toList();
    }

    private static LossLine line(Set<UUID> items, RollCopies roll) {
        List<CopyAt> proven = roll.provenElsewhere(items);
        List<CopyAt> unproven = roll.copies().stream()
                .filter(copy -> !items.contains(copy.itemId()) && !copy.proven())
                .filter(copy -> copy.condition() == Condition.GOOD || copy.condition() == Condition.QUARANTINED)
                .toList();
        Left left = proven.size() > 1
                ? Left.SEVERAL_COPIES
                : proven.size() == 1
                        ? Left.ONE_COPY
                        : roll.isOnCardOtherThan(items)
                                ? Left.CARD
                                : unproven.isEmpty() ? Left.NOTHING : Left.UNPROVEN_COPIES;
        List<String> on = Stream.concat(
                        roll.on(items).stream().map(CopyAt::itemCode),
                        roll.isOnCardAmong(items) ? Stream.of(roll.cardCode()) : Stream.of())
                .distinct()
                .sorted()
                .toList();
        return new LossLine(roll.rollId(), roll.rollCode(), left, roll.cardCode(), on, proven, unproven);
    }

    /** Whether it is proven on more than one other medium. */
    boolean isSafe() {
        return left == Left.SEVERAL_COPIES;
    }

    /** Whether nothing else is proven. */
    boolean isBare() {
        return proven.isEmpty();
    }
}

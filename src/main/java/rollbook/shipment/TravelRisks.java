package rollbook.shipment;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rollbook.verification.RollCopies;
import rollbook.verification.RollCopies.CopyAt;

/** What would be lost with a shipment: a pure function of what is in it and where the rolls are besides. */
final class TravelRisks {
    private TravelRisks() {}

    /** The kinds of risk, the worst first. */
    enum Kind {
        /** Nothing is proven anywhere, and whatever there is of the roll travels. */
        ONLY_ORIGINAL,
        /** All that is proven travels, on one item, and no card holds the roll elsewhere. */
        ONLY_PROOF,
        /** All that is proven travels, on several items, and no card holds the roll elsewhere. */
        ALL_PROOF,
        /** The same as the two before, but the card stays and still holds the roll. */
        ONLY_PROOF_BUT_CARD,
        ALL_PROOF_BUT_CARD,
        /** Nothing is proven anywhere, and a copy travels. */
        UNPROVEN
    }

    /**
     * @param rolls codes, in their order
     * @param items codes of the items that they travel on
     * @param cards codes of the cards that stay and hold them, where the kind says so
     */
    record Risk(Kind kind, List<String> rolls, List<String> items, List<String> cards) {}

    private record Key(Kind kind, List<String> items) {}

    /** The worst first; rolls that travel alike are told together. */
    static List<Risk> of(Map<UUID, String> codesByItem, List<RollCopies> rolls) {
        Map<Key, TreeMap<String, String>> alike = new LinkedHashMap<>();
        for (RollCopies roll : rolls) {
            @Nullable Key key = key(codesByItem, roll);
            if (key != null) {
                alike.computeIfAbsent(key, same -> new TreeMap<>()).put(roll.rollCode(), roll.cardCode());
            }
        }
        return alike.entrySet().stream()
                .map(risk -> new Risk(
                        risk.getKey().kind(),
                        List.copyOf(risk.getValue().keySet()),
                        risk.getKey().items(),
                        List.copyOf(risk.getValue().values())))
                .sorted(Comparator.comparing(Risk::kind)
                        .thenComparing(risk -> risk.rolls().get(0)))
                .toList();
    }

    private static @Nullable Key key(Map<UUID, String> codesByItem, RollCopies roll) {
        Set<UUID> box = codesByItem.keySet();
        if (!roll.provenElsewhere(box).isEmpty()) {
            return null;
        }
        boolean cardStays = roll.isOnCardOtherThan(box);
        List<CopyAt> proven = roll.provenOn(box);
        if (!proven.isEmpty()) {
            List<String> items =
                    proven.stream().map(CopyAt::itemCode).distinct().sorted().toList();
            boolean one = items.size() == 1;
            return new Key(
                    one
                            ? cardStays ? Kind.ONLY_PROOF_BUT_CARD : Kind.ONLY_PROOF
                            : cardStays ? Kind.ALL_PROOF_BUT_CARD : Kind.ALL_PROOF,
                    items);
        }
        List<String> items = roll.isOnCardAmong(box)
                ? List.of(String.valueOf(codesByItem.get(roll.cardId())))
                : roll.on(box).stream()
                        .map(CopyAt::itemCode)
                        .distinct()
                        .sorted()
                        .collect(Collectors.toList());
        return new Key(cardStays ? Kind.UNPROVEN : Kind.ONLY_ORIGINAL, items);
    }
}

package rollbook.shipment;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import rollbook.inventory.Condition;
import rollbook.manifest.Verdict;
import rollbook.production.Rendition;
import rollbook.verification.RollCopies;
import rollbook.verification.RollCopies.Card;
import rollbook.verification.RollCopies.CopyAt;

/** Makes up rolls and where they are: an item's id follows from its code. */
final class RollsAbout {
    private final String code;
    private final Card card;
    private final List<CopyAt> copies = new ArrayList<>();

    private RollsAbout(String code, Card card) {
        this.code = code;
        this.card = card;
    }

    static UUID id(String itemCode) {
        return UUID.nameUUIDFromBytes(itemCode.getBytes(java.nio.charset.StandardCharsets.UTF_8));
    }

    static RollsAbout roll(String code, Card card) {
        return new RollsAbout(code, card);
    }

    RollsAbout proven(String itemCode) {
        return copy(itemCode, Condition.GOOD, Verdict.PROVEN, true);
    }

    RollsAbout unproven(String itemCode) {
        return copy(itemCode, Condition.GOOD, Verdict.UNKNOWN, false);
    }

    RollsAbout quarantined(String itemCode) {
        return copy(itemCode, Condition.QUARANTINED, Verdict.PROVEN, false);
    }

    RollsAbout lost(String itemCode) {
        return copy(itemCode, Condition.LOST, Verdict.PROVEN, false);
    }

    private RollsAbout copy(String itemCode, Condition condition, Verdict verdict, boolean proven) {
        copies.add(new CopyAt(
                id(itemCode),
                itemCode,
                "Set",
                false,
                condition,
                Rendition.AS_RECORDED,
                1L,
                verdict,
                proven,
                List.of()));
        return this;
    }

    /** Its card is called after it. */
    RollCopies there() {
        return new RollCopies(
                id(code), code, 1L, id("CARD-" + code), "CARD-" + code, card, List.of(), List.copyOf(copies));
    }
}

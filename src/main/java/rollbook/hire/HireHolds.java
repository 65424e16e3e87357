package rollbook.hire;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import rollbook.production.Membership;
import rollbook.verification.LastProofs;
import rollbook.verification.LastProofs.OnMedium;
import rollbook.web.Display;
import rollbook.web.Link;

/** What keeps hired items from going back: a roll on a card, and rolls without a proven copy anywhere else. */
@Component
class HireHolds {
    /** So many rolls are named one by one. */
    private static final int NAMED = 5;

    private final LastProofs proofs;
    private final Display display;

    HireHolds(LastProofs proofs, Display display) {
        this.proofs = proofs;
        this.display = display;
    }

    /**
     * @param text what is on the item; empty if nothing is, as far as the portal knows
     * @param last for each roll that is proven nowhere else, where else it is and what is lacking there
     * @param lastRolls links to their pages
     */
    record OnItem(UUID itemId, String code, boolean keeps, String text, List<String> last, List<Link> lastRolls) {}

    /** Of the items that are here, by their ids; in one statement. */
    Map<UUID, OnItem> of(Membership viewer, Collection<Hired> hired) {
        List<HiredItem> items =
                hired.stream().filter(Hired::isHere).map(Hired::item).toList();
        List<UUID> media = items.stream()
                .filter(item -> item.kind().holdsCopies())
                .map(HiredItem::id)
                .toList();
        Map<UUID, List<OnMedium>> rolls =
                proofs.of(viewer.productionId(), media).stream().collect(Collectors.groupingBy(OnMedium::itemId));
        Map<UUID, OnItem> found = new LinkedHashMap<>();
        for (HiredItem item : items) {
            found.put(item.id(), onItem(viewer, item, rolls.getOrDefault(item.id(), List.of())));
        }
        return found;
    }

    private OnItem onItem(Membership viewer, HiredItem item, List<OnMedium> rolls) {
        if (item.mayHoldRoll()) {
            String state = display.text("web.card-state." + item.cardState());
            return new OnItem(
                    item.id(), item.code(), true, display.text("hire.holds.card", state), List.of(), List.of());
        }
        List<OnMedium> last = rolls.stream().filter(OnMedium::isLast).toList();
        if (last.isEmpty()) {
            String text = rolls.isEmpty() ? "" : display.text("hire.holds.proven", rolls.size());
            return new OnItem(item.id(), item.code(), false, text, List.of(), List.of());
        }
        List<String> sentences = new ArrayList<>();
        last.stream()
                .limit(NAMED)
                .forEach(roll ->
                        sentences.add(display.text("hire.holds.last.roll", roll.rollCode(), proofs.elsewhere(roll))));
        if (last.size() > NAMED) {
            sentences.add(display.text("hire.holds.last.more", last.size() - NAMED));
        }
        return new OnItem(
                item.id(),
                item.code(),
                true,
                display.text("hire.holds.last", last.get(0).rollCode(), last.size() - 1),
                sentences,
                last.stream()
                        .map(roll -> new Link(viewer.path("rolls/" + roll.rollId()), roll.rollCode()))
                        .toList());
    }
}

package rollbook.inventory;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.context.support.DefaultMessageSourceResolvable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.production.Membership;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** Does one act to several items: to all of them, or to none. */
@Service
class SeveralItems {
    /** More are a matter for a list that is read in. */
    static final int MOST = 300;

    private final MediaItems items;
    private final Custody custody;

    SeveralItems(MediaItems items, Custody custody) {
        this.items = items;
        this.custody = custody;
    }

    /** An item as somebody saw it. */
    record Seen(UUID id, int version) {}

    /** @param why it can't be done */
    record Kept(MediaItem item, Refusal why) {}

    /** To which of the items the act will be done, and to which it can't. */
    record Preview(List<MediaItem> will, List<Kept> kept) {}

    Preview look(UUID productionId, CustodyAct act, Collection<MediaItem> chosen) {
        Map<UUID, ItemJourney.Journey> journeys = journeys(productionId, act, chosen);
        List<MediaItem> will = new ArrayList<>();
        List<Kept> kept = new ArrayList<>();
        for (MediaItem item : chosen) {
            Refusal why = refusal(act, item, journeys.get(item.id()));
            if (why == null) {
                will.add(item);
            } else {
                kept.add(new Kept(item, why));
            }
        }
        return new Preview(will, kept);
    }

    /**
     * Each item gets a link of its chain and an entry in the record.
     *
     * @param placeId where they go, if the act moves them
     * @throws Refusal if somebody else changed one of them meanwhile, naming all that were changed, or it can't be done to one
     * @throws NotFoundException if this production hasn't one of them, or no such place
     */
    @Transactional
    void enter(Membership by, CustodyAct act, List<Seen> seen, @Nullable UUID placeId, String holder, String note) {
        Map<UUID, Integer> versions = seen.stream().collect(Collectors.toMap(Seen::id, Seen::version, Math::min));
        List<MediaItem> locked = items.findByIds(by.productionId(), versions.keySet()).stream()
                .sorted(Comparator.comparing(MediaItem::code))
                .map(item -> items.lock(by.productionId(), item.id()))
                .toList();
        if (locked.size() < versions.size()) {
            throw new NotFoundException();
        }
        List<String> changed = locked.stream()
                .filter(item -> item.version() != versions.get(item.id()))
                .map(MediaItem::code)
                .toList();
        if (!changed.isEmpty()) {
            throw new Refusal("inventory.refused.several-changed", String.join(", ", changed), changed.size());
        }
        Map<UUID, ItemJourney.Journey> journeys = journeys(by.productionId(), act, locked);
        for (MediaItem item : locked) {
            Refusal why = refusal(act, item, journeys.get(item.id()));
            if (why != null) {
                throw why;
            }
            boolean moves = act.moves() && placeId != null;
            custody.enter(
                    by.signatory(), item, act, moves ? placeId : item.placeId(), moves ? holder : item.holder(), note);
        }
    }

    /** What is on its way is moved by arriving, so only a move asks. */
    private Map<UUID, ItemJourney.Journey> journeys(UUID productionId, CustodyAct act, Collection<MediaItem> chosen) {
        return act == CustodyAct.MOVED && !chosen.isEmpty()
                ? custody.journeys(
                        productionId, chosen.stream().map(MediaItem::id).toList())
                : Map.of();
    }

    private static @Nullable Refusal refusal(CustodyAct act, MediaItem item, ItemJourney.@Nullable Journey journey) {
        if (!act.startsFrom(item.condition())) {
            return new Refusal(
                    "inventory.refused.condition",
                    item.code(),
                    new DefaultMessageSourceResolvable(
                            ItemState.valueOf(item.condition().name()).key()));
        }
        return journey == null ? null : Custody.underWay(item, journey);
    }
}

package rollbook.post;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rollbook.inventory.Condition;
import rollbook.offload.Copy;
import rollbook.offload.Roll;
import rollbook.production.Leg;
import rollbook.shipment.SentItem;
import rollbook.shipment.ShipmentItem;
import rollbook.verification.CopyStandings.Standings;

/**
 * What set believes was sent to post against what post has.
 *
 * @param rolls pulled from a camera, in the order in which they were loaded
 * @param media the most pressing first
 */
record PostBook(PostPlace place, List<RollAtPost> rolls, List<MediumAtPost> media, List<Leg> legs) {

    /** What the book is made of: all rolls and copies of the production, stays at post, shipments to it and from it. */
    record Entries(
            List<Roll> rolls, List<Copy> copies, Standings standings, List<Stay> stays, List<SentItem> shipments) {}

    static PostBook of(PostPlace place, Entries entries, Instant now) {
        Map<UUID, List<Stay>> stays = entries.stays().stream().collect(Collectors.groupingBy(Stay::itemId));
        Map<UUID, List<SentItem>> sent = new LinkedHashMap<>();
        Map<UUID, SentItem> leaving = new LinkedHashMap<>();
        for (SentItem one : entries.shipments()) {
            if (one.toPlaceId().equals(place.placeId())) {
                sent.computeIfAbsent(one.itemId(), item -> new ArrayList<>()).add(one);
            } else {
                leaving.put(one.itemId(), one);
            }
        }
        Map<UUID, String> codes = entries.rolls().stream().collect(Collectors.toMap(Roll::id, Roll::code));
        Map<UUID, List<CopyAtPost>> byRoll = new LinkedHashMap<>();
        Map<UUID, List<CopyAtPost>> byItem = new LinkedHashMap<>();
        for (Copy copy : entries.copies()) {
            CopyAtPost seen = CopyAtPost.of(
                    codes.getOrDefault(copy.rollId(), ""),
                    copy,
                    entries.standings().of(copy),
                    stays.getOrDefault(copy.itemId(), List.of()),
                    sent.getOrDefault(copy.itemId(), List.of()),
                    now);
            byRoll.computeIfAbsent(copy.rollId(), roll -> new ArrayList<>()).add(seen);
            byItem.computeIfAbsent(copy.itemId(), item -> new ArrayList<>()).add(seen);
        }
        List<RollAtPost> rolls = entries.rolls().stream()
                .filter(roll -> roll.pulledAt() != null)
                .map(roll -> RollAtPost.of(roll, byRoll.getOrDefault(roll.id(), List.of())))
                .toList();
        List<MediumAtPost> media = new ArrayList<>();
        byItem.forEach((itemId, copies) -> {
            MediumAtPost medium = medium(
                    copies,
                    entries.standings(),
                    stays.getOrDefault(itemId, List.of()),
                    sent.getOrDefault(itemId, List.of()),
                    leaving.get(itemId),
                    now);
            if (medium != null) {
                media.add(medium);
            }
        });
        media.sort(Comparator.comparing(MediumAtPost::step)
                .thenComparing(medium -> medium.any().itemCode()));
        return new PostBook(place, rolls, media, entries.standings().legs());
    }

    /** Null if the medium isn't at post and post doesn't wait for it. */
    private static @Nullable MediumAtPost medium(
            List<CopyAtPost> all,
            Standings standings,
            List<Stay> stays,
            List<SentItem> sent,
            @Nullable SentItem leaving,
            Instant now) {
        Copy any = all.get(all.size() - 1).copy();
        Stay stay = stays.isEmpty() || !stays.get(stays.size() - 1).isCurrent() ? null : stays.get(stays.size() - 1);
        SentItem last = sent.isEmpty() ? null : sent.get(sent.size() - 1);
        SentItem coming = last != null && last.isOpen() ? last : null;
        List<CopyAtPost> copies =
                all.stream().filter(copy -> !copy.copy().isErased()).toList();
        boolean gone = any.itemCondition() == Condition.RETIRED || any.itemCondition() == Condition.RETURNED;
        boolean lost = copies.stream().anyMatch(copy -> copy.state() == PostState.LOST);
        if (gone || stay == null && coming == null && !lost) {
            return null;
        }
        Leg leg = standings.legs().stream()
                .filter(one -> one.id().equals(any.legId()))
                .findFirst()
                .orElse(null);
        boolean denied = copies.stream().anyMatch(copy -> copy.state() == PostState.NOT_HERE)
                || copies.isEmpty() && stay != null && stay.isDenied(null);
        MediumAtPost.Step step = MediumAtPost.Step.of(
                any.itemCondition(),
                leg != null && leg.returnsAfterDays() != null,
                copies,
                standings.ofMedium(any.itemId()),
                coming,
                leaving != null && leaving.state() != ShipmentItem.State.MISSING,
                stay != null && (CopyAtPost.isConfirmed(stay, stays, sent) || isReceivedIn(stay, all)),
                denied,
                coming != null && coming.isLate(now));
        return new MediumAtPost(
                any,
                leg,
                copies,
                standings.ofMedium(any.itemId()),
                stay,
                coming == null ? last : coming,
                stay == null ? null : CopyAtPost.receipt(stay, stays, sent),
                leaving,
                step);
    }

    /** Whether a copy on it was read or erased there meanwhile. */
    private static boolean isReceivedIn(Stay stay, List<CopyAtPost> copies) {
        return copies.stream().anyMatch(copy -> copy.received() && stay.equals(copy.stay()));
    }

    int received() {
        return (int) rolls.stream().filter(RollAtPost::isReceived).count();
    }

    int proven() {
        return (int) rolls.stream().filter(RollAtPost::isProven).count();
    }

    List<MediumAtPost> with(MediumAtPost.Step... steps) {
        List<MediumAtPost.Step> wanted = List.of(steps);
        return media.stream().filter(medium -> wanted.contains(medium.step())).toList();
    }
}

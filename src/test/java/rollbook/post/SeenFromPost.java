package rollbook.post;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.inventory.CardState;
import rollbook.inventory.Condition;
import rollbook.manifest.Verdict;
import rollbook.offload.Copy;
import rollbook.offload.Roll;
import rollbook.production.Leg;
import rollbook.production.MediaKind;
import rollbook.production.Rendition;
import rollbook.shipment.SentItem;
import rollbook.shipment.ShipmentItem;
import rollbook.verification.CopyStanding;
import rollbook.verification.CopyStandings.Standings;
import rollbook.verification.MediumStanding;

/** A production as post sees it, put together by a test; hours count from the moment when its copies were written. */
final class SeenFromPost {
    static final Instant WRITTEN = Instant.parse("2031-03-03T18:00:00Z");
    static final UUID SET = UUID.randomUUID();
    static final UUID POST = UUID.randomUUID();
    static final UUID SHUTTLE_LEG = UUID.randomUUID();
    static final UUID TAPE_LEG = UUID.randomUUID();
    static final LocalDate DAY_1 = LocalDate.of(2031, 3, 3);

    final List<Roll> rolls = new ArrayList<>();
    final List<Copy> copies = new ArrayList<>();
    final Map<UUID, CopyStanding> standings = new LinkedHashMap<>();
    final Map<UUID, MediumStanding> gates = new LinkedHashMap<>();
    final List<Stay> stays = new ArrayList<>();
    final List<SentItem> shipments = new ArrayList<>();
    private long links;

    static Instant hour(int hour) {
        return WRITTEN.plus(Duration.ofHours(hour));
    }

    Roll roll(String code, int day) {
        Roll roll = new Roll(
                UUID.randomUUID(),
                code,
                UUID.randomUUID(),
                code.substring(0, 1),
                UUID.randomUUID(),
                "Main",
                UUID.nameUUIDFromBytes(new byte[] {(byte) day}),
                day,
                DAY_1.plusDays(day - 1L),
                UUID.randomUUID(),
                "CARD-1",
                1L,
                CardState.BLANK,
                false,
                UUID.randomUUID(),
                WRITTEN,
                WRITTEN,
                BigDecimal.TEN,
                1_000L,
                "",
                0);
        rolls.add(roll);
        return roll;
    }

    /** What a copy is like; the rest is as usual. */
    record Like(
            UUID place,
            Condition condition,
            @Nullable UUID leg,
            @Nullable Instant erasedAt) {
        static final Like AT_SET = new Like(SET, Condition.GOOD, SHUTTLE_LEG, null);
        static final Like AT_POST = new Like(POST, Condition.GOOD, SHUTTLE_LEG, null);
        static final Like TAPE = new Like(POST, Condition.GOOD, TAPE_LEG, null);
    }

    Copy copy(Roll roll, UUID item, Like like) {
        Copy copy = new Copy(
                UUID.randomUUID(),
                roll.id(),
                item,
                "ITEM-" + Math.floorMod(item.hashCode(), 1000),
                MediaKind.DRIVE,
                like.condition(),
                like.place(),
                like.place().equals(POST) ? "Post house" : "Set",
                false,
                "",
                like.leg(),
                Rendition.AS_RECORDED,
                WRITTEN,
                like.erasedAt(),
                null);
        copies.add(copy);
        return copy;
    }

    void checked(Copy copy, Verdict verdict, int hour) {
        boolean usable = copy.itemCondition() == Condition.GOOD;
        standings.put(
                copy.id(),
                new CopyStanding(
                        verdict,
                        usable && verdict == Verdict.PROVEN,
                        usable && (verdict == Verdict.FAILED || verdict == Verdict.INCOMPLETE),
                        hour(hour)));
    }

    /** Somebody moved the item to post. */
    Stay stay(UUID item, int from, @Nullable Integer until) {
        Stay stay =
                new Stay(item, ++links, hour(from), until == null ? null : hour(until), false, null, null, null, null);
        stays.add(stay);
        return stay;
    }

    void said(Stay stay, boolean here, int hour) {
        stays.set(
                stays.indexOf(stay),
                new Stay(
                        stay.itemId(),
                        stay.custodyId(),
                        stay.arrivedAt(),
                        stay.until(),
                        stay.registered(),
                        here,
                        hour(hour),
                        "Pia",
                        ""));
    }

    void registered(UUID item) {
        stays.add(new Stay(item, ++links, hour(-1000), null, true, null, null, null, null));
    }

    void sent(UUID item, UUID to, int sentAt, @Nullable Integer expected, ShipmentItem.State state) {
        shipments.add(new SentItem(
                UUID.randomUUID(),
                shipments.size() + 1,
                item,
                to,
                to.equals(POST) ? "Post house" : "Set",
                "night courier",
                hour(sentAt),
                expected == null ? null : hour(expected),
                state,
                null,
                null));
    }

    Standings allStandings() {
        return new Standings(List.of(leg(SHUTTLE_LEG, "Shuttle", 5), leg(TAPE_LEG, "Tape", null)), standings, gates);
    }

    static Leg leg(UUID id, String name, @Nullable Integer returnsAfterDays) {
        return new Leg(
                id, name, MediaKind.DRIVE, POST, "Post house", Rendition.AS_RECORDED, 100, returnsAfterDays, true, 0);
    }

    PostBook book(int now) {
        return PostBook.of(
                new PostPlace(POST, "Post house", ZoneOffset.UTC, 1),
                new PostBook.Entries(rolls, copies, allStandings(), stays, shipments),
                hour(now));
    }

    PostState state(Roll roll, int now) {
        return book(now).rolls().stream()
                .filter(one -> one.roll().equals(roll))
                .findFirst()
                .orElseThrow()
                .state();
    }
}

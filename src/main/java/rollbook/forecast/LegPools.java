package rollbook.forecast;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.burndown.Kept;
import rollbook.burndown.Pool;
import rollbook.inventory.Condition;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.inventory.Ownership;
import rollbook.learning.Encodings;
import rollbook.offload.Copies;
import rollbook.offload.Encoding;
import rollbook.offload.Rolls;
import rollbook.production.CopyPlan;
import rollbook.production.Leg;
import rollbook.production.MediaKind;
import rollbook.production.Production;
import rollbook.production.Rendition;
import rollbook.quantity.Share;

/**
 * The legs of a copy plan with the pools that serve them.
 *
 * <p>Nobody records when a medium of a leg that comes back was emptied: what was shot so many days ago counts as gone
 * from it, as the copy plan has it.
 */
@Component
class LegPools {
    private static final double PER_CENT = 100;

    private final CopyPlan plan;
    private final MediaItems items;
    private final Copies copies;
    private final Rolls rolls;
    private final RecordedRows rows;

    LegPools(CopyPlan plan, MediaItems items, Copies copies, Rolls rolls, RecordedRows rows) {
        this.plan = plan;
        this.items = items;
        this.copies = copies;
        this.rolls = rolls;
        this.rows = rows;
    }

    List<ForecastInput.Leg> legs(
            Production production,
            LocalDate today,
            List<ForecastInputs.RecordedBytes> recorded,
            PoolArrivals arrivals) {
        Pools pools = new Pools(
                today,
                items.list(production.id(), MediaKind.DRIVE, MediaKind.ARRAY, MediaKind.TAPE),
                copies.usedBytes(production.id()).stream()
                        .collect(Collectors.toMap(Copies.Used::itemId, Copies.Used::bytes)),
                rows.onReturningLegs(production.id()));
        List<Encoding> encodings = rolls.encodings(production.id());
        long rollBytes = TypicalRoll.bytes(
                recorded.stream().map(ForecastInputs.RecordedBytes::bytesOrNone).toList());
        return plan.legs(production.id()).stream()
                .map(leg -> {
                    Reduction reduction = leg.rendition() == Rendition.ENCODED
                            ? Reduction.of(encodings, leg.keptPercent())
                            : Reduction.NONE;
                    Share kept = reduction.share();
                    return new ForecastInput.Leg(
                            new Pool(
                                    leg.id(),
                                    leg.name(),
                                    leg.mediaKind() == MediaKind.TAPE && rollBytes > 0,
                                    kept.ceilOf(rollBytes),
                                    returnAfterDays(leg),
                                    kept(leg, kept, encodings),
                                    pools.items(leg),
                                    arrivals.of(leg.id()),
                                    pools.releases(leg),
                                    waitingBytes(leg, kept, today, recorded)),
                            reduction);
                })
                .toList();
    }

    /** An encoded leg's share isn't quite the same from roll to roll, and uncertain while few are measured. */
    private static Kept kept(Leg leg, Share share, List<Encoding> encodings) {
        if (leg.rendition() != Rendition.ENCODED) {
            return Kept.WHOLE;
        }
        List<Encodings.Roll> rolls = encodings.stream()
                .map(encoding -> new Encodings.Roll(encoding.recordedBytes(), encoding.encodedBytes()))
                .toList();
        return new Kept(share, Encodings.from(leg.keptPercent() / PER_CENT, rolls));
    }

    /** The room of a medium that comes back on the day it was written is free from the next morning on. */
    private static @Nullable Integer returnAfterDays(Leg leg) {
        return leg.returnsAfterDays() == null ? null : Math.max(1, leg.returnsAfterDays());
    }

    /** Recorded and not on this leg: never written, of unknown size, or on an item that is gone or in doubt. */
    private static long waitingBytes(Leg leg, Share kept, LocalDate today, List<ForecastInputs.RecordedBytes> rolls) {
        return rolls.stream()
                .filter(recorded -> isWaiting(recorded.roll(), leg, today))
                .mapToLong(recorded -> kept.ceilOf(recorded.bytesOrNone()))
                .reduce(0, Math::addExact);
    }

    private static boolean isWaiting(RecordedRows.RecordedRoll roll, Leg leg, LocalDate today) {
        boolean served = roll.writtenOn().contains(leg.id()) && isFree(leg, roll.date(), today);
        return !served && (roll.sizeBytes() == null || !roll.heldOn().contains(leg.id()));
    }

    /** Whether what was shot on that date has done its service on a leg that comes back. */
    private static boolean isFree(Leg leg, LocalDate shotOn, LocalDate today) {
        Integer days = returnAfterDays(leg);
        return days != null && !shotOn.plusDays(days).isAfter(today);
    }

    /** The items, what is on them, and when it was shot. */
    private record Pools(
            LocalDate today, List<MediaItem> items, Map<UUID, Long> used, List<RecordedRows.Written> written) {

        List<Pool.Item> items(Leg leg) {
            return pool(leg)
                    .map(item -> new Pool.Item(
                            item.code(),
                            item.capacityBytes() == null ? 0 : item.capacityBytes(),
                            used.getOrDefault(item.id(), 0L) - freeBytes(leg, item),
                            item.usable(),
                            null,
                            item.ownership() == Ownership.HIRED ? item.hiredUntil() : null))
                    .toList();
        }

        private long freeBytes(Leg leg, MediaItem item) {
            return written.stream()
                    .filter(bytes -> bytes.itemId().equals(item.id()) && isFree(leg, bytes.date(), today))
                    .mapToLong(RecordedRows.Written::bytes)
                    .sum();
        }

        List<Pool.Release> releases(Leg leg) {
            Integer days = returnAfterDays(leg);
            if (days == null) {
                return List.of();
            }
            List<UUID> usable =
                    pool(leg).filter(MediaItem::usable).map(MediaItem::id).toList();
            Map<LocalDate, Long> byDate = new TreeMap<>();
            written.stream()
                    .filter(bytes -> usable.contains(bytes.itemId()) && !isFree(leg, bytes.date(), today))
                    .forEach(bytes -> byDate.merge(bytes.date().plusDays(days), bytes.bytes(), Math::addExact));
            List<Pool.Release> releases = new ArrayList<>();
            byDate.forEach((date, bytes) -> releases.add(new Pool.Release(date, bytes)));
            return releases;
        }

        /** Retired, returned and lost items are no part of the pool any more. */
        private Stream<MediaItem> pool(Leg leg) {
            return items.stream()
                    .filter(item -> leg.id().equals(item.legId()))
                    .filter(item -> item.condition() == Condition.GOOD || item.condition() == Condition.QUARANTINED);
        }
    }
}

package rollbook.scenario;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rollbook.format.NamedFormat;
import rollbook.inventory.CardState;
import rollbook.inventory.MediaItem;
import rollbook.inventory.Ownership;
import rollbook.offload.RollSizes;
import rollbook.offload.ShowRates;
import rollbook.production.Leg;
import rollbook.production.MediaKind;
import rollbook.production.Rendition;
import rollbook.quantity.Fraction;
import rollbook.recording.RecordingFormat;
import rollbook.turnaround.LearnedRate;
import rollbook.turnaround.MeasuredRates;

/**
 * What a production's items bring to a day: those in good condition that are with it.
 *
 * @param rates that the show's own offloads reached
 * @param freeOnly whether only cards that are blank or in a camera now are counted on
 */
record MediaFacts(List<MediaItem> items, List<DayRows.Row> rows, MeasuredRates rates, boolean freeOnly) {

    List<DayFacts.CardType> cardTypes() {
        Map<String, List<MediaItem>> alike = new LinkedHashMap<>();
        present(MediaKind.CARD)
                .forEach(card -> alike.computeIfAbsent(key(card), key -> new ArrayList<>())
                        .add(card));
        return alike.entrySet().stream()
                .map(type -> cardType(type.getKey(), type.getValue()))
                .toList();
    }

    private DayFacts.CardType cardType(String key, List<MediaItem> cards) {
        MediaItem first = cards.get(0);
        long counted = cards.stream().filter(card -> !freeOnly || isFree(card)).count();
        return new DayFacts.CardType(
                key,
                first.model(),
                Objects.requireNonNull(first.capacityBytes()),
                cards.stream()
                        .map(MediaItem::readBytesPerSecond)
                        .filter(Objects::nonNull)
                        .min(Long::compare)
                        .orElse(null),
                Math.toIntExact(counted),
                cards.stream()
                        .map(MediaFacts::hireWeek)
                        .filter(Objects::nonNull)
                        .findFirst()
                        .orElse(null));
    }

    private static boolean isFree(MediaItem card) {
        return card.cardState() == CardState.BLANK || card.cardState() == CardState.IN_CAMERA;
    }

    /** How many cards are in each state that one is in. */
    List<DayFacts.InState> cardsByState() {
        Map<CardState, Integer> byState = new EnumMap<>(CardState.class);
        present(MediaKind.CARD).forEach(card -> byState.merge(card.cardState(), 1, Integer::sum));
        return byState.entrySet().stream()
                .map(state -> new DayFacts.InState(state.getKey(), state.getValue()))
                .toList();
    }

    /**
     * Cards that are pulled and not copied yet, those first that are being copied.
     *
     * @param formats by their ids
     */
    List<DayFacts.Exposed> exposed(Map<UUID, NamedFormat> formats) {
        return rows.stream()
                .filter(row -> row.kind() == DayRows.Kind.EXPOSED)
                .flatMap(row -> present(MediaKind.CARD)
                        .filter(card -> card.id().equals(row.itemId()))
                        .map(card -> exposed(card, formats.get(row.thingId()).format(), row)))
                .filter(card -> card.bytes() > 0)
                .toList();
    }

    private static DayFacts.Exposed exposed(MediaItem card, RecordingFormat format, DayRows.Row row) {
        long bytes = row.count();
        if (bytes == 0 && row.minutes() != null) {
            bytes = RollSizes.estimate(row.minutes(), format).bytes();
        }
        // What was logged by hand may say more than a card holds.
        return new DayFacts.Exposed(
                card.code(),
                key(card),
                Math.min(bytes, Objects.requireNonNull(card.capacityBytes())),
                format.bytesPerFrame().toDouble());
    }

    /** The kind of an item's card, or null if it is none that counts. */
    @Nullable
    String typeOf(UUID cardId) {
        return items.stream()
                .filter(item -> item.id().equals(cardId) && item.capacityBytes() != null)
                .findFirst()
                .map(MediaFacts::key)
                .orElse(null);
    }

    /** Kinds of card are told apart by model and capacity. */
    private static String key(MediaItem card) {
        String model = card.model().toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "-");
        return model + "-" + Beginning.megabytes(Objects.requireNonNull(card.capacityBytes()));
    }

    List<DayFacts.Reader> readers() {
        return present(MediaKind.READER)
                .map(reader -> new DayFacts.Reader(reader.code(), reader.readBytesPerSecond(), hireWeek(reader)))
                .toList();
    }

    List<DayFacts.Adapter> adapters() {
        return present(MediaKind.ADAPTER)
                .map(adapter -> new DayFacts.Adapter(adapter.code(), adapter.readBytesPerSecond(), hireWeek(adapter)))
                .toList();
    }

    List<DayFacts.Destination> destinations(List<Leg> legs) {
        return legs.stream().map(this::destination).toList();
    }

    private DayFacts.Destination destination(Leg leg) {
        Optional<MediaItem> medium = medium(leg);
        List<MediaItem> pool = items.stream()
                .filter(item -> leg.id().equals(item.legId()) && item.usable())
                .toList();
        // Cards wait for what is written where they are; the other copies are made from those later.
        Optional<LearnedRate> learned = medium.flatMap(item -> rates.of(ShowRates.kind(item, leg.rendition())))
                .filter(MediaFacts::isMeasured);
        boolean onSet = pool.stream().anyMatch(item -> !item.offSite());
        return new DayFacts.Destination(
                leg.name(),
                medium.map(MediaItem::code).orElse(null),
                onSet,
                leg.rendition() == Rendition.ENCODED,
                leg.keptPercent(),
                learned.map(rate -> written(rate, leg))
                        .or(() -> medium.map(MediaItem::writeBytesPerSecond))
                        .orElse(null),
                learned.map(LearnedRate::sessions).orElse(0),
                medium.map(MediaItem::readBytesPerSecond).orElse(null),
                medium.filter(item -> item.ownership() == Ownership.BOUGHT)
                        .map(MediaItem::costMinorUnits)
                        .orElse(null));
    }

    private static boolean isMeasured(LearnedRate rate) {
        return rate.basis() != LearnedRate.Basis.STATED;
    }

    /** What is learned counts bytes as they come from the card; an encoder leaves fewer to write. */
    private static long written(LearnedRate rate, Leg leg) {
        Fraction kept = leg.rendition() == Rendition.ENCODED ? Fraction.of(leg.keptPercent(), 100) : Fraction.ONE;
        return rate.rate().times(kept).bytesPerSecond().floor().longValueExact();
    }

    List<DayFacts.MeasuredWay> measuredWays() {
        List<DayFacts.MeasuredWay> ways = new ArrayList<>();
        List<MediaItem> adapters = new ArrayList<>(present(MediaKind.ADAPTER).toList());
        adapters.add(0, null);
        for (MediaItem reader : present(MediaKind.READER).toList()) {
            for (MediaItem adapter : adapters) {
                firstOfEachType()
                        .forEach(card -> rates.of(ShowRates.way(reader, adapter, card))
                                .filter(MediaFacts::isMeasured)
                                .ifPresent(rate -> ways.add(measured(reader, adapter, card, rate))));
            }
        }
        return ways;
    }

    private static DayFacts.MeasuredWay measured(
            MediaItem reader, @Nullable MediaItem adapter, MediaItem card, LearnedRate rate) {
        return new DayFacts.MeasuredWay(
                reader.code(),
                adapter == null ? null : adapter.code(),
                key(card),
                rate.rate().bytesPerSecond().floor().longValueExact(),
                rate.sessions());
    }

    private List<MediaItem> firstOfEachType() {
        Map<String, MediaItem> first = new LinkedHashMap<>();
        present(MediaKind.CARD).forEach(card -> first.putIfAbsent(key(card), card));
        return List.copyOf(first.values());
    }

    /** Written last, else the first good one of the pool. */
    private Optional<MediaItem> medium(Leg leg) {
        Optional<UUID> last = rows.stream()
                .filter(row ->
                        row.kind() == DayRows.Kind.MEDIUM && row.thingId().equals(leg.id()))
                .map(DayRows.Row::itemId)
                .findFirst();
        return last.flatMap(id -> items.stream()
                        .filter(item -> item.id().equals(id) && item.usable())
                        .findFirst())
                .or(() -> items.stream()
                        .filter(item -> leg.id().equals(item.legId()) && item.usable())
                        .findFirst());
    }

    private Stream<MediaItem> present(MediaKind kind) {
        return items.stream().filter(item -> item.kind() == kind && item.usable() && !item.offSite());
    }

    private static @Nullable Long hireWeek(MediaItem item) {
        return item.ownership() == Ownership.HIRED ? item.costMinorUnits() : null;
    }
}

package rollbook.shipment;

import java.time.Clock;
import java.time.Instant;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.production.Membership;
import rollbook.web.Choice;
import rollbook.web.Display;
import rollbook.web.Listing;
import rollbook.web.Paged;

/** Gathers what the list of shipments shows, as far as its address asks for it. */
@Component
class ShipmentListPages {
    private final Shipments shipments;
    private final ShipmentWords words;
    private final Display display;
    private final Clock clock;

    ShipmentListPages(Shipments shipments, ShipmentWords words, Display display, Clock clock) {
        this.shipments = shipments;
        this.words = words;
        this.display = display;
        this.clock = clock;
    }

    /** What the list may be sorted by; equal ones the newest first. */
    enum Column {
        SHIPMENT(Comparator.comparing(Shipment::number)),
        STATE(Comparator.comparing(Shipment::state)),
        WAY(Comparator.comparing(one -> (one.toPlaceName() + "\n" + one.fromPlaceName()).toLowerCase(Locale.ROOT))),
        CARRIER(Comparator.comparing(one -> one.carrier().toLowerCase(Locale.ROOT))),
        WHEN(Comparator.comparing(Column::when));

        static final Listing.Order<Column> USUAL = new Listing.Order<>(SHIPMENT, true);

        private final Comparator<Shipment> ascending;

        Column(Comparator<Shipment> ascending) {
            this.ascending = ascending;
        }

        /** What the list says of it: when it is expected, else when it was sent, else when it was packed. */
        private static Instant when(Shipment one) {
            Instant expected = one.awaitsReceipt() ? one.expectedBy() : null;
            @Nullable Instant sent = one.sentAt();
            return expected != null ? expected : sent != null ? sent : one.packedAt();
        }
    }

    /** @param itemCodes of what is in it */
    record Row(Shipment shipment, List<String> itemCodes, boolean late) {
        public String codes() {
            return String.join(", ", itemCodes);
        }

        boolean isOpen() {
            return shipment.isPacking() || shipment.awaitsReceipt();
        }
    }

    /**
     * @param all how many shipments there are
     * @param open being packed or under way; none of them is left to a later page
     * @param done the others
     */
    record ListView(String sentence, Listing list, int all, List<Row> open, Paged<Row> done) {
        public long found() {
            return open.size() + done.total();
        }
    }

    ListView page(Membership membership, Map<String, String> address) {
        UUID production = membership.productionId();
        List<Shipment> all = shipments.ofProduction(production);
        Map<UUID, List<String>> codes = shipments.items(production).stream()
                .collect(Collectors.groupingBy(
                        ShipmentItem::shipmentId, Collectors.mapping(ShipmentItem::code, Collectors.toList())));
        Instant now = clock.instant();
        Listing list = Listing.of(membership.path("shipments"), address);
        String state = list.choose(
                "state", display.text("shipment.column.state"), display.text("shipment.list.any-state"), states());
        String place = list.choose(
                "place", display.text("shipment.list.place"), display.text("shipment.list.any-place"), places(all));
        String text = list.text("q", display.text("shipment.list.text")).toLowerCase(Locale.ROOT);
        Listing.Order<Column> order = list.order(
                Column.values(),
                Column.USUAL,
                column -> display.text("shipment.column." + column.name().toLowerCase(Locale.ROOT)));
        Map<Boolean, List<Row>> rows = all.stream()
                .filter(one -> state.isEmpty() || one.state().name().equals(state))
                .filter(one -> place.isEmpty()
                        || one.fromPlaceName().equals(place)
                        || one.toPlaceName().equals(place))
                .sorted(order.of(order.column().ascending)
                        .thenComparing(Comparator.comparing(Shipment::number).reversed()))
                .map(one -> new Row(one, codes.getOrDefault(one.id(), List.of()), one.isLate(now)))
                .filter(row -> holds(row, text))
                .collect(Collectors.partitioningBy(Row::isOpen));
        return new ListView(
                words.sentence(all, now), list, all.size(), rows.get(true), Paged.of(rows.get(false), list.page()));
    }

    private List<Choice> states() {
        return Arrays.stream(Shipment.State.values())
                .map(state -> new Choice(state.name(), display.text("shipment.state." + state)))
                .toList();
    }

    private static List<Choice> places(List<Shipment> all) {
        return all.stream()
                .flatMap(one -> Stream.of(one.fromPlaceName(), one.toPlaceName()))
                .distinct()
                .sorted()
                .map(name -> new Choice(name, name))
                .toList();
    }

    private boolean holds(Row row, String text) {
        Shipment one = row.shipment();
        return text.isEmpty()
                || String.join(
                                " ",
                                display.text("shipment.name", one.number()),
                                row.codes(),
                                one.carrier(),
                                one.receiver(),
                                one.fromPlaceName(),
                                one.toPlaceName())
                        .toLowerCase(Locale.ROOT)
                        .contains(text);
    }
}

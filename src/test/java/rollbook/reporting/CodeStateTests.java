package rollbook.reporting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.purchase.Orders;
import rollbook.reporting.Codes.Found;
import rollbook.shipment.Shipments;
import rollbook.testing.DemoTest;

/** What the code box says of a thing's state in SQL is what its page says of it, which Java reckons. */
@DemoTest
class CodeStateTests {
    private static final int ALL = 10_000;

    @Autowired
    Codes codes;

    @Autowired
    Orders orders;

    @Autowired
    Shipments shipments;

    @Autowired
    MediaItems items;

    @Autowired
    JdbcClient jdbc;

    private UUID production;

    @BeforeEach
    void findTheDemo() {
        production = jdbc.sql("select id from production_production where code = 'TIDECLERK'")
                .query(UUID.class)
                .single();
    }

    @Test
    void everyOrderIsWhereItsPageSaysThatItIs() {
        assertThat(states("order"))
                .hasSizeGreaterThan(3)
                .isEqualTo(
                        byId(orders.list(production), order -> order.id(), order -> "purchase.state." + order.state()));
    }

    @Test
    void everyShipmentIsWhereItsPageSaysThatItIs() {
        assertThat(states("shipment"))
                .hasSizeGreaterThan(3)
                .isEqualTo(byId(
                        shipments.ofProduction(production),
                        shipment -> shipment.id(),
                        shipment -> "shipment.state." + shipment.state()));
    }

    @Test
    void everyItemStandsAsItsPageSays() {
        List<MediaItem> all = items.list(production);
        assertThat(all)
                .hasSizeGreaterThan(40)
                .allSatisfy(item -> assertThat(codes.find(production, item.code(), null, ALL))
                        .as(item.code())
                        .filteredOn(found -> found.id().equals(item.id()))
                        .extracting(Found::state)
                        .containsExactly(item.stateKey()));
    }

    private Map<UUID, String> states(String word) {
        return codes.find(production, word, null, ALL).stream()
                .filter(found -> found.what().equals(word.equals("order") ? "purchase.code" : "shipment.code"))
                .collect(Collectors.toMap(Found::id, Found::state, (one, other) -> one, TreeMap::new));
    }

    private static <T> Map<UUID, String> byId(List<T> all, Function<T, UUID> id, Function<T, String> state) {
        return all.stream().collect(Collectors.toMap(id, state, (one, other) -> one, TreeMap::new));
    }
}

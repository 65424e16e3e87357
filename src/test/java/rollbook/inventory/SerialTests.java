package rollbook.inventory;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;

import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.transaction.support.TransactionTemplate;
import rollbook.production.MediaKind;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;
import rollbook.web.Refusal;

@PortalTest
class SerialTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Inventory inventory;

    @Autowired
    MediaItems items;

    @Autowired
    Custody custody;

    @Autowired
    Withdrawals withdrawals;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    JdbcClient jdbc;

    private TestProduction production;
    private Membership office;
    private UUID set;

    @BeforeEach
    void makeProduction() {
        production = fixtures.production();
        office = production.as(Role.OFFICE);
        set = production.place("Set", false);
    }

    @Test
    void twoItemsOfAProductionNeverHaveOneSerialNumber() {
        UUID first = inventory.register(office, reader("READER-1", "sn 47"));
        assertThatThrownBy(() ->
                        inventory.importAll(office, List.of(reader("READER-2", "SN 48"), reader("READER-3", "SN 47"))))
                .isInstanceOfSatisfying(Refusal.class, refusal -> {
                    assertThat(refusal.key()).isEqualTo("inventory.refused.serials-exist");
                    assertThat(refusal.args()).containsExactly("SN 47", 1);
                });
        assertThatThrownBy(() -> inventory.importAll(office, List.of(reader("READER-4", "a"), reader("READER-5", "A"))))
                .isInstanceOf(Refusal.class);
        UUID other = inventory.register(office, reader("READER-6", "SN 49"));
        assertThatThrownBy(() -> inventory.edit(
                        office, other, reader("READER-6", "Sn 47").details(), 0))
                .isInstanceOfSatisfying(
                        Refusal.class,
                        refusal -> assertThat(refusal.key()).isEqualTo("inventory.refused.serials-exist"));
        assertThat(items.list(production.id)).extracting(MediaItem::code).containsExactly("READER-1", "READER-6");
        assertThat(items.get(production.id, first).serial()).isEqualTo("sn 47");
    }

    @Test
    void itemsWithoutOneAndThoseOfOtherProductionsAreInNobodysWay() {
        inventory.register(office, reader("READER-1", ""));
        inventory.register(office, reader("READER-2", ""));
        inventory.register(office, reader("READER-3", "SN 1"));
        TestProduction other = fixtures.production();
        UUID place = other.place("Set", false);
        inventory.register(
                other.as(Role.OFFICE),
                new NewItem(MediaKind.READER, reader("READER-3", "SN 1").details(), place, ""));
        assertThat(items.findBySerial(other.id, "sn 1")).map(MediaItem::placeId).contains(place);
        assertThat(items.findBySerial(production.id, "")).isEmpty();
    }

    @Test
    void whatWentBackToItsSupplierMayBeHiredAgainAndTheBoxFindsTheOneThatIsHere() {
        UUID before = inventory.register(office, reader("READER-1", "SN 47"));
        custody.giveBack(office, before, "");
        assertThat(find("sn 47")).isEqualTo(production.path("media/" + before));
        UUID again = inventory.register(office, reader("READER-2", "SN 47"));
        assertThat(find("sn 47")).isEqualTo(production.path("media/" + again));
        assertThat(items.findBySerials(production.id, List.of("sn 47")))
                .extracting(MediaItem::id)
                .containsExactly(again);
    }

    @Test
    void theItemsPageTheListAndItsLabelTellTheSerialNumber() throws Exception {
        UUID id = inventory.register(office, reader("READER-1", "SN-47"));
        assertThat(page("media/" + id).select("dl.facts").text()).contains("Serial number SN-47");
        assertThat(page("media?q=sn-47").select("tbody tr")).hasSize(1);
        assertThat(page("media?q=sn-48").select("tbody tr")).isEmpty();
        Document labels = page("media/labels?items=sn-47%20READER-1&sheet=A4_24");
        assertThat(labels.select(".label-one")).hasSize(1);
        assertThat(labels.select(".label-one p").eachText()).contains("READER-1", "serial SN-47");
    }

    @Test
    void theFormRefusesATakenSerialNumberAtItsFieldAndKeepsWhatWasTyped() throws Exception {
        inventory.register(office, reader("READER-1", "SN 47"));
        var result = mvc.post()
                .uri(production.path("media/new"))
                .with(production.signedInAs(Role.OFFICE))
                .with(csrf())
                .param("code", "READER-2")
                .param("kind", "READER")
                .param("model", "test reader")
                .param("serial", "sn 47")
                .param("owner", "BOUGHT")
                .param("place", "Set")
                .exchange();
        assertThat(result).hasStatus(422);
        Document page = Jsoup.parse(result.getResponse().getContentAsString());
        assertThat(page.select("#serial-error").text()).contains("sn 47");
        assertThat(page.select("#serial").val()).isEqualTo("sn 47");
        assertThat(page.select("#model").val()).isEqualTo("test reader");
    }

    @Test
    void whatWasRegisteredByMistakeIsStruckOutAndItsCodeAndSerialNumberAreFreeAgain() {
        UUID wrong = inventory.register(office, reader("READER-1", "SN 47"));
        strikeOut(wrong);
        assertThat(items.get(production.id, wrong).code()).isEqualTo("READER-1.OUT");
        assertThat(items.get(production.id, wrong).condition()).isEqualTo(Condition.RETIRED);
        UUID again = inventory.register(office, reader("READER-1", "SN 47"));
        strikeOut(again);
        assertThat(items.get(production.id, again).code()).isEqualTo("READER-1.OUT2");
        assertThat(custody.chain(production.id, again))
                .extracting(CustodyEntry::act, CustodyEntry::note)
                .containsExactly(tuple(CustodyAct.WITHDRAWN, "wrong receipt"), tuple(CustodyAct.REGISTERED, ""));
    }

    @Test
    void aLongCodeIsCutSoThatTheMarkFits() {
        UUID wrong = inventory.register(office, reader("A".repeat(32), ""));
        strikeOut(wrong);
        assertThat(items.get(production.id, wrong).code()).isEqualTo("A".repeat(28) + ".OUT");
    }

    @Test
    void nothingIsStruckOutIfOneOfThemWasMovedUsedOrDoubted() {
        UUID fine = inventory.register(office, reader("READER-1", ""));
        UUID moved = inventory.register(office, reader("READER-2", ""));
        custody.move(office, moved, set, "runner", "", 0);
        UUID doubted = inventory.register(office, reader("READER-3", ""));
        custody.quarantine(office, doubted, "bent pin");
        UUID card = production.item("CARD-1", "CARD", set, null);
        jdbc.sql("update inventory_item set card_state = 'IN_CAMERA' where id = ?")
                .param(card)
                .update();
        for (UUID used : List.of(moved, doubted, card)) {
            assertThatThrownBy(() -> strikeOut(fine, used))
                    .isInstanceOfSatisfying(
                            Refusal.class, refusal -> assertThat(refusal.key()).isEqualTo("inventory.refused.used"));
        }
        assertThat(items.get(production.id, fine).code()).isEqualTo("READER-1");
    }

    private void strikeOut(UUID... ids) {
        transaction.executeWithoutResult(status -> withdrawals.strikeOut(office, List.of(ids), "wrong receipt"));
    }

    private String find(String text) {
        var result = mvc.get()
                .uri(production.path("find") + "?code={text}", text)
                .with(production.signedInAs(Role.WRANGLER))
                .exchange();
        return String.valueOf(result.getResponse().getRedirectedUrl());
    }

    private Document page(String path) throws Exception {
        var result = mvc.get()
                .uri(URI.create(production.path(path)))
                .with(production.signedInAs(Role.OFFICE))
                .exchange();
        assertThat(result).hasStatusOk();
        return Jsoup.parse(result.getResponse().getContentAsString());
    }

    private NewItem reader(String code, String serial) {
        return new NewItem(
                MediaKind.READER,
                new ItemDetails(
                        code, serial, "test reader", null, null, null, Ownership.HIRED, "Test hire", null, null, null),
                set,
                "");
    }
}

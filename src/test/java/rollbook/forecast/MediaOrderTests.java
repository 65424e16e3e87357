package rollbook.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpStatus;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.web.Refusal;

@PortalTest
class MediaOrderTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    MediaOrders orders;

    @Autowired
    ForecastRuns runs;

    private StorageShow show;
    private Membership office;
    private UUID leg;

    @BeforeEach
    void makeShow() {
        show = new StorageShow(fixtures, jdbc);
        office = show.production.as(Role.OFFICE);
        leg = show.keptLeg("SHUTTLE");
    }

    private UUID fiveDrives() {
        return orders.enter(
                office,
                new MediaOrders.NewOrder(leg, show.date(0), show.date(4), 5, 2_000 * StorageShow.GB, "by telephone"));
    }

    @Test
    void whatIsOrderedIsKeptAndAsksForAForecast() throws Exception {
        show.supply(leg, 2000, 1, 2, 3, 18_050);
        Document form = get("storage/order/" + leg);
        assertThat(form.select("#itemCapacityGb").val()).isEqualTo("2000");
        assertThat(form.select("#orderedOn").val()).isEqualTo(show.today.toString());

        assertThat(order("5", show.date(4).toString())).hasStatus(HttpStatus.FOUND);
        assertThat(orders.list(show.production.id))
                .extracting(MediaOrder::items, MediaOrder::itemCapacityBytes, MediaOrder::expectedOn, MediaOrder::left)
                .containsExactly(org.assertj.core.groups.Tuple.tuple(5, 2_000 * StorageShow.GB, show.date(4), 5));
        assertThat(runs.asked(show.production.id).because()).containsExactly(Because.ORDER);
        assertThat(onRecord()).containsExactly("media.ordered");
    }

    @Test
    void whatCannotBeIsSaidBesideTheField() {
        assertThat(order("0", show.date(4).toString())).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(order("5", show.date(-4).toString())).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(order("5", "")).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(orders.list(show.production.id)).isEmpty();
    }

    @Test
    void itComesInPartsUntilNothingIsLeft() throws Exception {
        UUID order = fiveDrives();
        assertThat(get("storage/orders/" + order).select("#sentence").text()).isEqualTo("5 items are still to come.");
        assertThat(post(order, "receipt", "items", "3", "cameOn", show.today.toString(), "steps", "0"))
                .hasStatus(HttpStatus.FOUND);
        assertThat(orders.get(show.production.id, order).left()).isEqualTo(2);
        assertThat(post(order, "receipt", "items", "3", "cameOn", show.today.toString(), "steps", "1"))
                .as("more than is left")
                .hasStatus(HttpStatus.CONFLICT);
        assertThat(post(order, "receipt", "items", "2", "cameOn", show.today.toString(), "steps", "1"))
                .hasStatus(HttpStatus.FOUND);

        assertThat(orders.get(show.production.id, order).isOpen()).isFalse();
        assertThat(get("storage/orders/" + order).select("#sentence").text()).isEqualTo("All of it came.");
        assertThat(onRecord()).containsExactly("media.ordered", "media.came", "media.came");
    }

    @Test
    void whatHasNotComeIsCalledOffAndStaysOnRecord() throws Exception {
        UUID order = fiveDrives();
        orders.receive(office, order, 3, show.today, 0);
        assertThat(post(order, "cancellation", "steps", "1")).hasStatus(HttpStatus.FOUND);

        MediaOrder cancelled = orders.get(show.production.id, order);
        assertThat(cancelled.left()).isZero();
        assertThat(cancelled.came()).isEqualTo(3);
        assertThat(get("storage/orders/" + order).select("#sentence").text())
                .isEqualTo("What hadn’t come was called off.");
        assertThatThrownBy(() -> orders.cancel(office, order, 2)).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> orders.receive(office, order, 1, show.today, 2))
                .isInstanceOf(Refusal.class);
    }

    @Test
    void itCameOnADateBetweenTheOrderAndToday() throws Exception {
        UUID order = fiveDrives();
        for (int days : new int[] {-1, 1}) {
            assertThat(post(
                            order,
                            "receipt",
                            "items",
                            "1",
                            "cameOn",
                            show.date(days).toString(),
                            "steps",
                            "0"))
                    .as("%d days from today", days)
                    .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        }
        assertThat(post(order, "receipt", "items", "1", "cameOn", "", "steps", "0"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(orders.get(show.production.id, order).came()).isZero();
    }

    @Test
    void whatWasRecordedByMistakeIsTakenBackAndStaysOnRecord() throws Exception {
        UUID order = fiveDrives();
        orders.receive(office, order, 3, show.today, 0);
        assertThat(get("storage/orders/" + order)
                        .select("#recorded + ul li span")
                        .eachText())
                .singleElement()
                .asString()
                .contains("3 items came, recorded by OFFICE");

        assertThat(post(order, "correction", "number", "1", "steps", "0"))
                .as("somebody has seen an older state")
                .hasStatus(HttpStatus.CONFLICT);
        assertThat(post(order, "correction", "number", "1", "steps", "1")).hasStatus(HttpStatus.FOUND);
        assertThat(orders.get(show.production.id, order).came()).isZero();
        assertThat(get("storage/orders/" + order).select("#recorded")).isEmpty();
        assertThat(post(order, "correction", "number", "1", "steps", "2"))
                .as("taken back twice")
                .hasStatus(HttpStatus.NOT_FOUND);

        orders.cancel(office, order, 2);
        assertThat(orders.get(show.production.id, order).isOpen()).isFalse();
        orders.takeBack(office, order, 3, 3);
        assertThat(orders.get(show.production.id, order).left()).isEqualTo(5);
        assertThat(onRecord())
                .containsExactly(
                        "media.ordered",
                        "media.came",
                        "media.step-taken-back",
                        "media.order-cancelled",
                        "media.step-taken-back");
    }

    @Test
    void whoSawAnOlderStateIsRefused() {
        UUID order = fiveDrives();
        orders.receive(office, order, 1, show.today, 0);

        assertThatThrownBy(() -> orders.receive(office, order, 1, show.today, 0))
                .isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> orders.cancel(office, order, 0)).isInstanceOf(Refusal.class);
        assertThat(orders.get(show.production.id, order).came()).isOne();
    }

    @Test
    void aLegThatIsRemovedTakesItsOrdersAlong() {
        orders.receive(office, fiveDrives(), 1, show.today, 0);
        jdbc.sql("delete from production_leg where id = ?").param(leg).update();

        assertThat(orders.list(show.production.id)).isEqualTo(List.of());
    }

    private MvcTestResult order(String items, String expectedOn) {
        return mvc.post()
                .uri(show.production.path("storage/order/" + leg))
                .with(show.production.signedInAs(Role.OFFICE))
                .param("items", items)
                .param("itemCapacityGb", "2000")
                .param("orderedOn", show.today.toString())
                .param("expectedOn", expectedOn)
                .param("note", "")
                .exchange();
    }

    private MvcTestResult post(UUID order, String act, String... params) {
        var request = mvc.post()
                .uri(show.production.path("storage/orders/" + order + "/" + act))
                .with(show.production.signedInAs(Role.OFFICE));
        for (int i = 0; i < params.length; i += 2) {
            request.param(params[i], params[i + 1]);
        }
        return request.exchange();
    }

    private Document get(String path) throws Exception {
        MvcTestResult page = mvc.get()
                .uri(show.production.path(path))
                .with(show.production.signedInAs(Role.OFFICE))
                .exchange();
        assertThat(page).hasStatusOk();
        return Jsoup.parse(
                new String(page.getResponse().getContentAsByteArray(), java.nio.charset.StandardCharsets.UTF_8));
    }

    private List<String> onRecord() {
        return jdbc.sql("select action from audit_act where production_id = ? and action like 'media.%' order by id")
                .param(show.production.id)
                .query(String.class)
                .list();
    }
}

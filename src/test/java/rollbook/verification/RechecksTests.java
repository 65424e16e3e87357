package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.inventory.CardState;
import rollbook.inventory.MediaItems;
import rollbook.offload.Offloads;
import rollbook.offload.Rolls;
import rollbook.production.Alarm;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;
import rollbook.web.Refusal;

/** Proven copies age, and a check that fails names all that relied on the copy. */
@PortalTest
class RechecksTests {
    private static final String MADE_LONG_AGO = """
            <?xml version="1.0" encoding="UTF-8"?>
            <hashlist xmlns="urn:ASC:MHL:v2.0" version="2.0">
              <creatorinfo>
                <creationdate>2020-02-03T10:00:00Z</creationdate>
                <hostname>cart</hostname>
                <tool>reader</tool>
              </creatorinfo>
              <processinfo><process>in-place</process></processinfo>
              <hashes>
                <hash>
                  <path>A001/A001C001.mxf</path>
                  <md5 action="verified">900150983cd24fb0d6963f7d28e17f72</md5>
                </hash>
              </hashes>
            </hashlist>
            """;
    private static final String GOOD = "900150983cd24fb0d6963f7d28e17f72  A001/A001C001.mxf\n";
    private static final String BAD = "# read again\n900150983cd24fb0d6963f7d28e17f73  A001/A001C001.mxf\n";

    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Jobs jobs;

    @Autowired
    Rolls rolls;

    @Autowired
    Offloads offloads;

    @Autowired
    MediaItems items;

    @Autowired
    Documents documents;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Clearances clearances;

    @Autowired
    Rechecks rechecks;

    @Autowired
    FallenCopies fallen;

    private DocumentScene scene;
    private UUID roll;

    @BeforeEach
    void aRollThatIsProvenOnTwoMedia() throws IOException {
        scene = new DocumentScene(fixtures, mvc, rolls);
        scene.production.policy(2);
        roll = scene.roll("A001");
        UUID session = offloads.start(
                scene.wrangler,
                roll,
                scene.production.item("READER-1", "READER", scene.set, null),
                null,
                List.of(new Offloads.Destination(scene.shuttle, null), new Offloads.Destination(scene.vault, null)));
        offloads.finish(scene.wrangler, session, 1_000);
        upload("card.md5", GOOD, Subject.CARD, null);
        upload("0001_A001_2020-02-03_100000Z.mhl", MADE_LONG_AGO, Subject.COPY, scene.shuttle);
        upload("vault.md5", "# vault\n" + GOOD, Subject.COPY, scene.vault);
    }

    @Test
    void withoutAPlanThePageSaysSoAndOffersOneToThoseWhoMayPlan() {
        assertThat(page(Role.POST).text()).contains("No re-checks are planned", "Plan re-checks");
        assertThat(page(Role.READER).text())
                .contains("No re-checks are planned")
                .doesNotContain("Plan re-checks");
    }

    @Test
    void aCheckIsAsOldAsItsDocumentSaysAndNeverNewerThanItsArrival() {
        plan("driveDays", "30", "arrayDays", "30");
        Document page = page(Role.POST);
        assertThat(page.select("tbody tr").eachText())
                .hasSize(2)
                .satisfiesExactly(
                        first -> assertThat(first).contains("SHUTTLE-1", "days late", "A001"),
                        second -> assertThat(second).contains("VAULT-1", "in 30 days"));
        assertThat(page.select(".sentence").text()).contains("One medium is overdue", "SHUTTLE-1 comes first");
    }

    @Test
    void theCalendarNamesTheMediaOfADayInOneEntry() throws Exception {
        plan("driveDays", "30", "arrayDays", "30");
        upload("again.md5", "# read again\n" + GOOD, Subject.COPY, scene.shuttle);
        LocalDate due = LocalDate.now(scene.wrangler.zone()).plusDays(30);
        assertThat(rechecks.dueDates(scene.wrangler))
                .singleElement()
                .isEqualTo(new Rechecks.DueDate(due, List.of("SHUTTLE-1", "VAULT-1"), due.minusDays(30)));

        MvcTestResult made = mvc.post()
                .uri(scene.production.path("calendar/address"))
                .with(scene.production.signedInAs(Role.POST))
                .exchange();
        String address = Jsoup.parse(made.getResponse().getContentAsString())
                .select("#address")
                .text();
        assertThat(mvc.get().uri(address))
                .hasStatusOk()
                .bodyText()
                .contains(
                        "SUMMARY:Re-check of 2 media due\r\n",
                        "DESCRIPTION:To be read again by this day: SHUTTLE-1\\, VAULT-1.\r\n",
                        "DTSTART;VALUE=DATE:" + due.format(DateTimeFormatter.BASIC_ISO_DATE) + "\r\n",
                        "/p/" + scene.production.code + "/re-checks\r\n");
    }

    @Test
    void readingTheMediumAgainPutsTheNextCheckOff() throws IOException {
        plan("driveDays", "30");
        upload("again.md5", "# read again\n" + GOOD, Subject.COPY, scene.shuttle);
        assertThat(page(Role.POST).select("tbody tr").eachText())
                .singleElement()
                .asString()
                .contains("SHUTTLE-1", "in 30 days");
    }

    @Test
    void aCheckThatFailsAfterTheErasureNamesTheCardAndWhatCanRestoreIt() throws IOException {
        clearances.clear(scene.wrangler, roll, "CARD-A001");
        clearances.recordErasure(scene.wrangler, roll, "CARD-A001");
        upload("bad.md5", BAD, Subject.COPY, scene.shuttle);
        Document page = page(Role.WRANGLER);
        assertThat(page.select(".alarms").text())
                .contains(
                        "Roll A001 on SHUTTLE-1: 1 file is bad or missing",
                        "Card CARD-A001 was erased on the strength of this copy",
                        "Restore from: VAULT-1");
        assertThat(page.select(".alarms a").eachAttr("href"))
                .anyMatch(href -> href.matches(".*/rolls/" + roll + "/verdicts/\\d+"));
        upload("bad-too.md5", "# vault, read again\n" + BAD, Subject.COPY, scene.vault);
        assertThat(page(Role.WRANGLER).select(".alarms").text())
                .contains("No other copy of this roll is proven whole")
                .doesNotContain("Restore from");
    }

    @Test
    void aFallenCopyIsTheSameAlarmUntilItIsPutRightAndAnotherOneWhenItFallsAgain() throws IOException {
        assertThat(alarms()).isEmpty();
        clearances.clear(scene.wrangler, roll, "CARD-A001");
        upload("bad.md5", BAD, Subject.COPY, scene.shuttle);
        Alarm first = alarm();
        assertThat(first.messageKey()).isEqualTo("verification.alarm.cleared");
        assertThat(first.args()).containsExactly("A001", "SHUTTLE-1");
        upload("worse.md5", "# read again\n" + BAD, Subject.COPY, scene.shuttle);
        assertThat(alarm()).isEqualTo(first);

        upload("good.md5", "# copied anew\n" + GOOD, Subject.COPY, scene.shuttle);
        assertThat(alarms()).isEmpty();
        clearances.clear(scene.wrangler, roll, "CARD-A001");
        clearances.recordErasure(scene.wrangler, roll, "CARD-A001");
        upload("bad-again.md5", "# and again\n" + BAD, Subject.COPY, scene.shuttle);
        assertThat(alarm().key()).isNotEqualTo(first.key());
        assertThat(alarm().messageKey()).isEqualTo("verification.alarm.erased");
    }

    private Alarm alarm() {
        assertThat(alarms()).hasSize(1);
        return alarms().get(0);
    }

    private List<Alarm> alarms() {
        return fallen.alarms(scene.production.id);
    }

    @Test
    void aCopyThatWasErasedIsNotDueAndRestoresNothing() throws IOException {
        plan("driveDays", "30", "arrayDays", "30");
        clearances.clear(scene.wrangler, roll, "CARD-A001");
        jdbc.sql("update offload_copy set erased_at = now() where item_id = ?")
                .param(scene.vault)
                .update();
        assertThat(page(Role.POST).select("tbody tr").eachText())
                .singleElement()
                .asString()
                .contains("SHUTTLE-1");
        upload("bad.md5", BAD, Subject.COPY, scene.shuttle);
        assertThat(page(Role.WRANGLER).select(".alarms").text())
                .contains("No other copy of this roll is proven whole")
                .doesNotContain("Restore from");
    }

    @Test
    void aCheckThatFailsBeforeTheErasureKeepsTheCardAndSaysSo() throws IOException {
        clearances.clear(scene.wrangler, roll, "CARD-A001");
        upload("bad.md5", BAD, Subject.COPY, scene.shuttle);
        assertThat(page(Role.WRANGLER).select(".alarms").text())
                .contains("Card CARD-A001 has not been erased. Keep it");
        assertThat(rolls.get(scene.production.id, roll).cardId())
                .extracting(card -> items.get(scene.production.id, card).cardState())
                .isEqualTo(CardState.HELD);
    }

    @Test
    void onlyOfficeAndPostPlanAndWhatTheyTypeIsChecked() {
        assertThat(send(Role.WRANGLER, "driveDays", "30")).hasStatus(403);
        MvcTestResult wrong = send(Role.OFFICE, "driveDays", "0");
        assertThat(wrong).hasStatus(422);
        assertThat(wrong).bodyText().contains("Drives: days between two checks", "value=\"0\"");
        assertThat(send(Role.OFFICE, "driveDays", "")).hasStatus(302);
    }

    @Test
    void ofTwoWhoPlanAtOnceTheSecondIsTold() {
        var office = scene.production.as(Role.OFFICE);
        rechecks.changePlan(office, new RecheckPlan(30, null, null, 0));
        assertThatThrownBy(() -> rechecks.changePlan(office, new RecheckPlan(60, null, null, 0)))
                .isInstanceOf(Refusal.class);
        rechecks.changePlan(office, new RecheckPlan(null, null, null, 1));
        assertThat(rechecks.plan(scene.production.id).isEmpty()).isTrue();
    }

    private void plan(String... fields) {
        assertThat(send(Role.POST, fields)).hasStatus(302);
    }

    private MvcTestResult send(Role role, String... fields) {
        var request = mvc.post()
                .uri(scene.production.path("re-checks/plan"))
                .with(scene.production.signedInAs(role))
                .param("version", "0");
        for (int i = 0; i < fields.length; i += 2) {
            request = request.param(fields[i], fields[i + 1]);
        }
        return request.exchange();
    }

    private Document page(Role role) {
        MvcTestResult answer = mvc.get()
                .uri(scene.production.path("re-checks"))
                .with(scene.production.signedInAs(role))
                .exchange();
        assertThat(answer).hasStatusOk();
        return Jsoup.parse(new String(answer.getResponse().getContentAsByteArray(), StandardCharsets.UTF_8));
    }

    private void upload(String name, String content, Subject subject, @Nullable UUID item) throws IOException {
        documents.store(
                scene.wrangler,
                name,
                new ByteArrayInputStream(content.getBytes(StandardCharsets.UTF_8)),
                subject,
                item);
        jobs.run();
    }
}

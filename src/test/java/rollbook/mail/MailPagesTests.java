package rollbook.mail;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpMethod;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import org.springframework.transaction.support.TransactionTemplate;
import rollbook.production.Membership;
import rollbook.production.Memberships;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.FormValues;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;

/** What people say about their mail, and see of it. */
@PortalTest
class MailPagesTests {
    private static final Letter LETTER = new Letter(
            "Main day 1 wrapped",
            "It is wrapped & well.",
            List.of(new Letter.Part("Held", List.of(new Letter.Line("CARD-1", "/p/X/rolls/1")))));

    @Autowired
    Fixtures fixtures;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    Outbox outbox;

    @Autowired
    Envelopes envelopes;

    @Autowired
    Recipients recipients;

    @Autowired
    Subscriptions subscriptions;

    @Autowired
    Memberships memberships;

    private TestProduction production;

    @BeforeEach
    void begin() {
        production = fixtures.production();
    }

    @Test
    void anAddressIsUsedOnceItsOwnerHasConfirmedIt() throws Exception {
        assertThat(account(Role.POST).select(".sentence").text()).contains("knows no address of yours");
        assertThat(wantAddress(Role.POST, "post@tide.example")).hasStatus(302);
        Document asked = account(Role.POST);
        assertThat(asked.select(".sentence").text()).contains("goes to post@tide.example. Open the link");
        assertThat(subscriptions.addressee(production.id, person(Role.POST))).isEmpty();

        Posting confirmation = confirmation(Role.POST);
        assertThat(confirmation.to()).isEqualTo("post@tide.example");
        assertThat(confirmation.unsubscribe()).isNull();
        String link = link(confirmation.text());
        assertThat(link).startsWith("http://localhost/account/mail/confirmation?code=");
        assertThat(confirmation.html()).contains(link);
        assertThat(jdbc.sql("select count(*) from mail_message where position(? in text || html) > 0")
                        .param(link.substring(link.indexOf('=') + 1))
                        .query(Integer.class)
                        .single())
                .as("the code is kept nowhere")
                .isZero();

        assertThat(text(Role.OFFICE, link)).as("another person").contains("confirms nothing");
        assertThat(confirm(Role.OFFICE, link)).hasStatus(409);
        assertThat(text(Role.POST, link)).contains("Mail for you is to go to post@tide.example.");
        assertThat(recipients.of(person(Role.POST)).orElseThrow().address())
                .as("looking confirms nothing")
                .isNull();
        assertThat(confirm(Role.POST, link)).hasStatus(302);
        assertThat(account(Role.POST).select(".sentence").text()).isEqualTo("Mail for you goes to post@tide.example.");
        assertThat(subscriptions.addressee(production.id, person(Role.POST))).isPresent();
        assertThat(confirm(Role.POST, link)).as("a second time").hasStatus(409);
        assertThat(acts("person")).contains("mail.address-asked", "mail.address-confirmed");
    }

    @Test
    void aNewAddressTakesOverOnlyWhenItIsConfirmed() {
        recipients.keepKnown(person(Role.POST), "old@tide.example", ZoneId.of("UTC"));
        assertThat(wantAddress(Role.POST, "new@tide.example")).hasStatus(302);
        Recipient changing = recipients.of(person(Role.POST)).orElseThrow();
        assertThat(changing.address()).isEqualTo("old@tide.example");
        String first = link(confirmation(Role.POST).text());
        assertThat(wantAddress(Role.POST, "newer@tide.example")).hasStatus(302);
        assertThat(confirm(Role.POST, first)).as("the link of the one before").hasStatus(409);
        assertThat(confirm(Role.POST, link(confirmation(Role.POST).text()))).hasStatus(302);
        assertThat(recipients.of(person(Role.POST)).orElseThrow().address()).isEqualTo("newer@tide.example");
    }

    @Test
    void aLinkWorksForADay() {
        assertThat(wantAddress(Role.POST, "post@tide.example")).hasStatus(302);
        String link = link(confirmation(Role.POST).text());
        jdbc.sql("update mail_recipient set code_until = now() - interval '1 second' where person_id = ?")
                .param(person(Role.POST))
                .update();
        assertThat(text(Role.POST, link)).contains("confirms nothing");
        assertThat(confirm(Role.POST, link)).hasStatus(409);
    }

    @Test
    void anAddressThatIsForgottenGetsNothing() {
        recipients.keepKnown(person(Role.POST), "post@tide.example", ZoneId.of("UTC"));
        assertThat(post(Role.POST, "/account/mail/address/removal", Map.of("version", "0")))
                .hasStatus(409);
        assertThat(post(Role.POST, "/account/mail/address/removal", Map.of("version", "1")))
                .hasStatus(302);
        assertThat(subscriptions.addressee(production.id, person(Role.POST))).isEmpty();
        assertThat(account(Role.POST).select(".sentence").text()).contains("knows no address");
    }

    @Test
    void whatIsNoAddressIsSaidAtItsField() throws Exception {
        for (String typed : List.of("", "post", "post@", "a@b@c", "x".repeat(250) + "@tide.example")) {
            MvcTestResult wrong = post(Role.POST, "/account/mail/address", Map.of("address", typed, "version", "0"));
            assertThat(wrong).as(typed).hasStatus(422);
            Document page = Jsoup.parse(wrong.getResponse().getContentAsString());
            assertThat(page.select("#address").val()).isEqualTo(typed);
            assertThat(page.select("#address-error").text()).isNotBlank();
        }
        assertThat(outbox.countOfPerson(person(Role.POST))).isZero();
    }

    @Test
    void nobodyHasStrangersFloodedWithConfirmations() {
        for (int i = 0; i < 5; i++) {
            assertThat(wantAddress(Role.POST, "stranger" + i + "@tide.example")).hasStatus(302);
        }
        assertThat(wantAddress(Role.POST, "stranger5@tide.example")).hasStatus(409);
        assertThat(jdbc.sql("select count(*) from mail_message where person_id = ? and state = 'WAITING'")
                        .param(person(Role.POST))
                        .query(Integer.class)
                        .single())
                .as("only the last one is still to go")
                .isEqualTo(1);
    }

    @Test
    void quietHoursAreKeptByTheClocksOfWhereThePersonIs() throws Exception {
        Map<String, String> typed =
                Map.of("zone", "Pacific/Auckland", "from", "22:00", "until", "07:00", "wakes", "true", "version", "0");
        assertThat(post(Role.POST, "/account/mail/quiet-hours", typed)).hasStatus(302);
        Recipient kept = recipients.of(person(Role.POST)).orElseThrow();
        assertThat(kept.zone()).isEqualTo(ZoneId.of("Pacific/Auckland"));
        assertThat(kept.quietFrom()).isEqualTo(LocalTime.of(22, 0));
        assertThat(kept.quietUntil()).isEqualTo(LocalTime.of(7, 0));
        assertThat(kept.wakes()).isTrue();
        assertThat(post(Role.POST, "/account/mail/quiet-hours", typed))
                .as("from another window")
                .hasStatus(409);
        Map<String, String> shown = FormValues.of(account(Role.POST), "form[action$=quiet-hours]");
        assertThat(shown).containsEntry("zone", "Pacific/Auckland").containsEntry("from", "22:00:00");

        for (Map<String, String> wrong : List.of(
                Map.of("zone", "UTC", "from", "22:00", "until", "", "version", "1"),
                Map.of("zone", "UTC", "from", "", "until", "07:00", "version", "1"),
                Map.of("zone", "UTC", "from", "07:00", "until", "07:00", "version", "1"),
                Map.of("zone", "Atlantis", "from", "22:00", "until", "07:00", "version", "1"))) {
            MvcTestResult result = post(Role.POST, "/account/mail/quiet-hours", wrong);
            assertThat(result).as("%s", wrong).hasStatus(422);
            assertThat(Jsoup.parse(result.getResponse().getContentAsString()).select(".field.wrong"))
                    .as("%s", wrong)
                    .hasSize(1);
        }
        MvcTestResult unreadable = post(
                Role.POST,
                "/account/mail/quiet-hours",
                Map.of("zone", "UTC", "from", "late", "until", "07:00", "version", "1"));
        assertThat(unreadable).hasStatus(422);
        Document again = Jsoup.parse(unreadable.getResponse().getContentAsString());
        assertThat(again.select("#from").val()).isEqualTo("late");
        assertThat(again.select("#quiet-version").val()).isEqualTo("1");
        assertThat(again.select("#from-error").text()).contains("Write a time");
        assertThat(post(
                        Role.POST,
                        "/account/mail/quiet-hours",
                        Map.of("zone", "UTC", "from", "", "until", "", "version", "1")))
                .hasStatus(302);
        assertThat(recipients.of(person(Role.POST)).orElseThrow().quietFrom()).isNull();
    }

    @Test
    void eachChoosesForThemselvesWhatTheyAreTold() throws Exception {
        assertThat(choices(Role.WRANGLER))
                .containsKeys("digest", "alarms")
                .doesNotContainKeys("weekly", "muted")
                .containsEntry("version", "0");
        assertThat(choices(Role.READER)).doesNotContainKeys("digest", "alarms", "weekly", "muted");
        assertThat(page(Role.READER, production.path("mail"))
                        .select(".sentence")
                        .text())
                .isEqualTo("No mail of this production comes to you.");

        Map<String, String> chosen = Map.of("weekly", "true", "version", "0");
        assertThat(post(Role.READER, production.path("mail"), chosen)).hasStatus(302);
        assertThat(post(Role.READER, production.path("mail"), chosen))
                .as("from another window")
                .hasStatus(409);
        assertThat(choices(Role.READER)).containsKeys("weekly").doesNotContainKeys("digest", "alarms");
        assertThat(choices(Role.WRANGLER)).doesNotContainKeys("weekly");
        assertThat(account(Role.READER).select("tbody tr").eachText())
                .containsExactly("Test " + production.code + " no no yes");
        assertThat(jdbc.sql("select detail from audit_act where production_id = ? and action = 'mail.chosen'")
                        .param(production.id)
                        .query(String.class)
                        .list())
                .containsExactly("WEEKLY");
    }

    @Test
    void whoComesBackChoosesAnew() {
        subscriptions.choose(member(Role.POST), new Subscription(false, false, true, false, 0));
        assertThat(post(
                        Role.ADMINISTRATOR,
                        production.path("settings/people/" + person(Role.POST) + "/remove"),
                        Map.of()))
                .hasStatus(302);
        assertThat(jdbc.sql("select count(*) from mail_subscription where production_id = ?")
                        .param(production.id)
                        .query(Integer.class)
                        .single())
                .isZero();
    }

    @Test
    void aPersonReadsTheirOwnMailAndNobodyElses() {
        UUID id = written(Role.POST);
        Document list = account(Role.POST);
        assertThat(list.select("a[href$=" + id + "]").text()).isEqualTo(LETTER.subject());
        assertThat(list.text()).contains("waiting", "No mail server is set up");
        Document message = page(Role.POST, "/account/mail/messages/" + id);
        assertThat(message.select("h1").text()).isEqualTo(LETTER.subject());
        assertThat(message.text()).contains(LETTER.sentence());
        assertThat(message.select("section a").attr("href")).isEqualTo("/p/X/rolls/1");
        assertThat(get(Role.OFFICE, "/account/mail/messages/" + id)).hasStatus(404);
        assertThat(post(Role.OFFICE, "/account/mail/messages/" + id + "/withdrawal", Map.of()))
                .hasStatus(404);
        assertThat(get(Role.OFFICE, production.path("outbox"))).hasStatus(403);
        assertThat(get(Role.OFFICE, production.path("outbox/" + id))).hasStatus(403);
        assertThat(fixtures.production())
                .satisfies(other -> assertThat(
                                mvc.get().uri(other.path("outbox/" + id)).with(other.signedInAs(Role.ADMINISTRATOR)))
                        .hasStatus(404));
    }

    @Test
    void whatMayHaveGoneOutIsSentAgainByAPersonOnce() {
        UUID id = written(Role.POST);
        state(id, "UNCERTAIN");
        Document outboxPage = page(Role.ADMINISTRATOR, production.path("outbox"));
        assertThat(outboxPage.select(".sentence").text())
                .isEqualTo("One mail was written, and none waits. One needs to be looked at.");
        Document message = page(Role.ADMINISTRATOR, production.path("outbox/" + id));
        assertThat(message.text()).contains("may have gone out", "may arrive twice");
        Map<String, String> form = FormValues.of(message, "form[action$=again]");
        assertThat(post(Role.ADMINISTRATOR, production.path("outbox/" + id + "/again"), form))
                .hasStatus(302);
        assertThat(outbox.get(production.id, id).state()).isEqualTo(State.WAITING);
        assertThat(post(Role.ADMINISTRATOR, production.path("outbox/" + id + "/again"), form))
                .hasStatus(409);
        assertThat(acts("mail")).contains("mail.sent-again");
    }

    @Test
    void severalAreSentAgainAtOnceAllOrNone() {
        UUID first = written(Role.POST);
        UUID second = written(Role.OFFICE);
        UUID waits = written(Role.WRANGLER);
        state(first, "FAILED");
        state(second, "FAILED");
        Document list = page(Role.ADMINISTRATOR, production.path("outbox"));
        assertThat(list.select("input[name=seen]").eachAttr("value"))
                .containsExactlyInAnyOrder(first + ":1", second + ":1");
        String both = "outbox/again?seen=" + first + ":1&seen=" + second + ":1&seen=" + waits + ":0";
        Document look = page(Role.ADMINISTRATOR, production.path(both));
        assertThat(look.select("#sentence").text()).isEqualTo("2 mails go out once more.");
        assertThat(look.select("section[aria-labelledby=kept] tbody tr")).hasSize(1);

        state(second, "SENT");
        assertThat(sendAgain(production, first + ":1", second + ":1")).hasStatus(409);
        assertThat(outbox.get(production.id, first).state())
                .as("nothing half done")
                .isEqualTo(State.FAILED);
        assertThat(acts("mail")).doesNotContain("mail.sent-again");

        state(second, "FAILED");
        assertThat(sendAgain(production, first + ":1", second + ":1")).hasStatus(302);
        assertThat(outbox.get(production.id, first).state()).isEqualTo(State.WAITING);
        assertThat(outbox.get(production.id, second).state()).isEqualTo(State.WAITING);
        assertThat(sendAgain(production, first + ":1", second + ":1"))
                .as("once more")
                .hasStatus(409);
        assertThat(sendAgain(production)).as("nothing ticked").hasStatus(422);
        assertThat(sendAgain(production, "nonsense")).hasStatus(404);
        assertThat(sendAgain(fixtures.production(), first + ":1"))
                .as("of another production")
                .hasStatus(404);
    }

    private MvcTestResult sendAgain(TestProduction of, String... seen) {
        var request = mvc.post().uri(of.path("outbox/again")).with(of.signedInAs(Role.ADMINISTRATOR));
        return (seen.length == 0 ? request : request.param("seen", seen)).exchange();
    }

    @Test
    void whoAsksTwiceFromOldPagesSendsOnce() {
        UUID id = written(Role.POST);
        state(id, "FAILED");
        assertThat(post(Role.POST, "/account/mail/messages/" + id + "/again", Map.of("attempts", "0")))
                .as("an older page")
                .hasStatus(409);
        assertThat(post(Role.POST, "/account/mail/messages/" + id + "/again", Map.of("attempts", "1")))
                .hasStatus(302);
    }

    @Test
    void aMailThatWaitsCanBeHeldBackAndLetGoAgain() {
        UUID id = written(Role.POST);
        assertThat(post(Role.POST, "/account/mail/messages/" + id + "/withdrawal", Map.of()))
                .hasStatus(302);
        assertThat(page(Role.POST, "/account/mail/messages/" + id).text()).contains("Somebody held it back.");
        assertThat(post(Role.POST, "/account/mail/messages/" + id + "/withdrawal", Map.of()))
                .hasStatus(409);
        assertThat(post(Role.POST, "/account/mail/messages/" + id + "/again", Map.of("attempts", "0")))
                .hasStatus(302);
        assertThat(outbox.get(production.id, id).state()).isEqualTo(State.WAITING);
    }

    @Test
    void theOutboxShowsWhatNeedsToBeLookedAt() {
        assertThat(page(Role.ADMINISTRATOR, production.path("outbox")).text()).contains("No mail was written yet.");
        UUID refused = written(Role.POST);
        state(refused, "FAILED");
        UUID back = written(Role.OFFICE);
        state(back, "SENT");
        jdbc.sql("update mail_message set bounced_at = now(), bounce = '5.1.1 no such mailbox' where id = ?")
                .param(back)
                .update();
        written(Role.WRANGLER);
        Document all = page(Role.ADMINISTRATOR, production.path("outbox"));
        assertThat(all.select("tbody tr")).hasSize(3);
        assertThat(all.select(".sentence").text())
                .isEqualTo("3 mails were written, one of which waits. 2 need to be looked at.");
        assertThat(page(Role.ADMINISTRATOR, production.path("outbox?state=TROUBLE"))
                        .select("tbody tr")
                        .eachText())
                .hasSize(2)
                .anyMatch(row -> row.contains("POST") && row.contains("refused"))
                .anyMatch(row -> row.contains("OFFICE") && row.contains("came back"));
        assertThat(page(Role.OFFICE, "/account/mail/messages/" + back).text())
                .contains("It came back: 5.1.1 no such mailbox", "Send it again");
    }

    @Test
    void aLinkInEachMailEndsMailOfItsKindWithoutSigningIn() throws Exception {
        UUID id = written(Role.POST);
        Posting posting = posting(id);
        assertThat(posting.text()).contains("No more mail after wrapped days: " + posting.unsubscribe());
        String path = java.net.URI.create(posting.unsubscribe()).getPath();

        MvcTestResult offered = mvc.get().uri(path).exchange();
        assertThat(offered).hasStatusOk();
        assertThat(offered).bodyText().contains("You get a mail after each wrapped day of Test " + production.code);
        assertThat(subscriptions.of(member(Role.POST)).digest())
                .as("looking ends nothing")
                .isTrue();

        MvcTestResult ended =
                mvc.post().uri(path).param("List-Unsubscribe", "One-Click").exchange();
        assertThat(ended)
                .as("RFC 8058, 3.1: neither signed in, nor a token, nor led elsewhere")
                .hasStatusOk();
        assertThat(subscriptions.of(member(Role.POST))).isEqualTo(new Subscription(false, true, false, false, 1));
        assertThat(jdbc.sql("select detail from audit_act where production_id = ? and action = 'mail.ended'")
                        .param(production.id)
                        .query(String.class)
                        .list())
                .containsExactly("DIGEST");

        subscriptions.choose(member(Role.POST), new Subscription(true, true, false, false, 1));
        assertThat(mvc.post().uri(path)).hasStatusOk();
        assertThat(subscriptions.of(member(Role.POST)).digest())
                .as("a link works once")
                .isTrue();
        assertThat(mvc.get().uri(path)).bodyText().contains("This link was used already.");
        assertThat(mvc.get().uri("/mail/unsubscribe/" + "x".repeat(43))).hasStatus(404);
        assertThat(mvc.post().uri("/mail/unsubscribe/" + "x".repeat(43))).hasStatus(404);
        assertThat(jdbc.sql("select count(*) from mail_message where position(? in text || html) > 0")
                        .param(path)
                        .query(Integer.class)
                        .single())
                .as("the secret is kept nowhere")
                .isZero();
    }

    @Test
    void theLinkOfAMailThatWasSentTwiceWorksInEither() {
        UUID id = written(Role.POST);
        String first = java.net.URI.create(posting(id).unsubscribe()).getPath();
        String second = java.net.URI.create(posting(id).unsubscribe()).getPath();
        assertThat(first).isNotEqualTo(second);
        assertThat(mvc.post().uri(first)).hasStatusOk();
        assertThat(subscriptions.of(member(Role.POST)).digest()).isFalse();
    }

    private UUID person(Role role) {
        return production.as(role).personId();
    }

    private Membership member(Role role) {
        return memberships.of(production.id, person(role)).orElseThrow();
    }

    private UUID written(Role role) {
        recipients.keepKnown(person(role), role + "@tide.example", ZoneId.of("Europe/Lisbon"));
        String about = "day:" + UUID.randomUUID();
        outbox.write(
                subscriptions.addressee(production.id, person(role)).orElseThrow(),
                Kind.DIGEST,
                LETTER,
                List.of(about));
        return jdbc.sql("select message_id from mail_told where about = ?")
                .param(about)
                .query(UUID.class)
                .single();
    }

    private void state(UUID id, String state) {
        jdbc.sql("""
                        update mail_message set state = ?, attempts = 1, tried_at = now(), address = 'post@tide.example',
                            sent_at = now() where id = ?
                        """).params(state, id).update();
    }

    private Posting posting(UUID id) {
        Message message = outbox.get(production.id, id);
        Addressee to =
                subscriptions.addressee(production.id, message.personId()).orElseThrow();
        Recipient opened = new Recipient(
                "post@tide.example", null, null, null, "http://localhost", ZoneId.of("UTC"), null, null, false, 1);
        return transaction.execute(status -> envelopes.toMember(
                message, new Addressee(to.membership(), opened, to.subscription()), "post@tide.example"));
    }

    private Posting confirmation(Role role) {
        Message message = outbox.ofPerson(person(role), 0, 10).stream()
                .filter(one -> one.kind() == Kind.CONFIRMATION && one.state() == State.WAITING)
                .findFirst()
                .orElseThrow();
        Recipient recipient = recipients.of(person(role)).orElseThrow();
        return transaction.execute(status -> envelopes.confirmation(message, recipient, recipient.wantedAddress()));
    }

    private static String link(String text) {
        Matcher link = Pattern.compile("http\\S+confirmation\\?code=\\S+").matcher(text);
        assertThat(link.find()).as(text).isTrue();
        return link.group();
    }

    private MvcTestResult wantAddress(Role role, String address) {
        int version = recipients.of(person(role)).map(Recipient::version).orElse(0);
        return post(role, "/account/mail/address", Map.of("address", address, "version", String.valueOf(version)));
    }

    private MvcTestResult confirm(Role role, String link) {
        return post(role, "/account/mail/confirmation", Map.of("code", link.substring(link.indexOf('=') + 1)));
    }

    private String text(Role role, String link) {
        return page(role, link.replace("http://localhost", "")).text();
    }

    private Map<String, String> choices(Role role) {
        Map<String, String> values = FormValues.of(page(role, production.path("mail")), "main form");
        values.keySet().removeIf(name -> name.startsWith("_"));
        return values;
    }

    private Document account(Role role) {
        return page(role, "/account/mail");
    }

    private Document page(Role role, String path) {
        MvcTestResult result = get(role, path);
        assertThat(result).as(path).hasStatusOk();
        try {
            return Jsoup.parse(result.getResponse().getContentAsString());
        } catch (java.io.UnsupportedEncodingException impossible) {
            throw new AssertionError(impossible);
        }
    }

    private MvcTestResult get(Role role, String path) {
        return mvc.get().uri(path).with(production.signedInAs(role)).exchange();
    }

    private MvcTestResult post(Role role, String path, Map<String, String> values) {
        var request = mvc.method(HttpMethod.POST).uri(path).with(production.signedInAs(role));
        for (Map.Entry<String, String> value : values.entrySet()) {
            request = request.param(value.getKey(), value.getValue());
        }
        // As a browser does, for boxes that aren't ticked.
        for (String box : List.of("wakes", "digest", "alarms", "weekly", "muted")) {
            request = request.param("_" + box, "on");
        }
        return request.exchange();
    }

    private List<String> acts(String subject) {
        return jdbc.sql("select action from audit_act where subject_kind = ? and (person_id = ? or production_id = ?)")
                .params(subject, person(Role.POST), production.id)
                .query(String.class)
                .list();
    }
}

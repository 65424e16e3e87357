package rollbook.mail;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Time;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;
import rollbook.audit.AuditTrail;
import rollbook.cost.CostSentences;
import rollbook.forecast.Forecasts;
import rollbook.inventory.HireReturns;
import rollbook.post.PostStandings;
import rollbook.production.Alarm;
import rollbook.production.Role;
import rollbook.purchase.Orders;
import rollbook.schedule.DayStates;
import rollbook.schedule.ShootingDays;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;
import rollbook.verification.ProofSummaries;
import rollbook.verification.Rechecks;
import rollbook.web.Display;
import rollbook.web.Listing;

/** Which mail is written when, and to whom. */
@PortalTest
class MailingsTests {
    private static final Duration WRITTEN_AFTER = Mailings.AFTER_WRAP.plusSeconds(5);

    @Autowired
    Fixtures fixtures;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    Subscriptions subscriptions;

    @Autowired
    Recipients recipients;

    @Autowired
    Letters letters;

    @Autowired
    MailSettings settings;

    @Autowired
    AuditTrail trail;

    @Autowired
    Display display;

    @Autowired
    ProofSummaries proofs;

    @Autowired
    Forecasts forecasts;

    @Autowired
    Orders orders;

    @Autowired
    PostStandings post;

    @Autowired
    CostSentences costs;

    @Autowired
    HireReturns hires;

    @Autowired
    Rechecks rechecks;

    @Autowired
    ShootingDays days;

    @Autowired
    DayStates states;

    private final MovingClock clock = new MovingClock();
    private final List<Alarm> standing = new ArrayList<>();
    private TestProduction production;
    private Mailings mailings;
    private UUID unit;

    @BeforeEach
    void begin() {
        production = fixtures.production();
        unit = production.unit("Main");
        FactFinder finder = new FactFinder(
                proofs,
                post,
                forecasts,
                orders,
                hires,
                rechecks,
                costs,
                days,
                List.of(id -> id.equals(production.id) ? List.copyOf(standing) : List.of()),
                clock);
        mailings = new Mailings(
                jdbc, subscriptions, finder, letters, new Outbox(jdbc, settings, trail, display, clock), days, clock);
        for (Role role : Role.values()) {
            recipients.keepKnown(
                    production.as(role).personId(),
                    role.name() + "@" + production.code + ".example",
                    ZoneId.of("Europe/Lisbon"));
        }
    }

    @Test
    void halfAnHourAfterAWrapEachIsToldOnceWhatIsTheirs() {
        UUID day = wrapped(unit, 1);
        write();
        assertThat(all()).as("at once").isEmpty();

        clock.goOn(WRITTEN_AFTER);
        write();
        clock.goOn(Duration.ofMinutes(1));
        write();
        assertThat(all())
                .hasSize(4)
                .allMatch(message -> message.kind() == Kind.DIGEST && message.state() == State.WAITING)
                .extracting(Message::personName)
                .containsExactlyInAnyOrder("WRANGLER", "OFFICE", "POST", "ADMINISTRATOR");
        Message wrangler = to(Role.WRANGLER).get(0);
        assertThat(wrangler.subject()).isEqualTo(production.code + ": Main day 1 wrapped");
        assertThat(wrangler.text())
                .startsWith("Main day 1 is wrapped. No card may be cleared or erased now; none is held.\n")
                .contains("Proof\n", "{portal}" + production.path("safety"));
        assertThat(to(Role.OFFICE).get(0).text()).startsWith("Main day 1 is wrapped. There is no forecast");
        assertThat(told("day:" + day)).isEqualTo(4);
    }

    @Test
    void unitsThatWrapTogetherAreOneLetter() {
        UUID second = production.unit("Second");
        wrapped(unit, 1);
        clock.goOn(Duration.ofMinutes(20));
        wrapped(second, 1);
        clock.goOn(Duration.ofMinutes(11));
        write();
        clock.goOn(WRITTEN_AFTER);
        write();
        assertThat(to(Role.WRANGLER))
                .singleElement()
                .extracting(Message::subject)
                .asString()
                .contains("Main day 1", "Second day 1", " and ");
    }

    @Test
    void aDayThatWasOpenedAgainIsToldOfOnceItIsWrappedForGood() {
        UUID day = wrapped(unit, 1);
        states.reopen(production.as(Role.OFFICE), day, "one more take");
        clock.goOn(WRITTEN_AFTER);
        write();
        assertThat(all()).isEmpty();

        states.wrap(production.as(Role.OFFICE), day);
        clock.goOn(WRITTEN_AFTER);
        write();
        assertThat(to(Role.WRANGLER)).hasSize(1);

        states.reopen(production.as(Role.OFFICE), day, "another");
        states.wrap(production.as(Role.OFFICE), day);
        clock.goOn(WRITTEN_AFTER);
        write();
        assertThat(to(Role.WRANGLER)).as("told before").hasSize(1);
    }

    @Test
    void aWrapOfHalfADayAgoIsNoNews() {
        wrapped(unit, 1);
        clock.goOn(Duration.ofHours(13));
        write();
        assertThat(all()).isEmpty();
        clock.goOn(Duration.ofHours(-12));
        write();
        assertThat(all()).as("nor later").isEmpty();
    }

    @Test
    void aWrappedDayCanStillBeOpenedTakenBackAndRemoved() {
        UUID day = wrapped(unit, 1);
        states.reopen(production.as(Role.OFFICE), day, "a mistake");
        states.stop(production.as(Role.OFFICE), day);
        assertThat(jdbc.sql("delete from schedule_day where id = ?").param(day).update())
                .isEqualTo(1);
    }

    @Test
    void whoHasNoAddressOrWantsNothingIsToldNothing() {
        jdbc.sql("update mail_recipient set address = null, confirmed_at = null where person_id = ?")
                .param(production.as(Role.POST).personId())
                .update();
        subscriptions.choose(production.as(Role.OFFICE), new Subscription(false, true, true, false, 0));
        subscriptions.choose(production.as(Role.WRANGLER), new Subscription(true, true, true, true, 0));
        subscriptions.choose(production.as(Role.READER), new Subscription(true, false, false, false, 0));
        wrapped(unit, 1);
        clock.goOn(WRITTEN_AFTER);
        write();
        assertThat(all()).extracting(Message::personName).containsExactlyInAnyOrder("ADMINISTRATOR", "READER");
    }

    @Test
    void eachAlarmIsToldOnceToWhomItConcerns() {
        standing.add(alarm("one", Role.WRANGLER));
        write();
        write();
        assertThat(all()).extracting(Message::personName).containsExactlyInAnyOrder("WRANGLER", "ADMINISTRATOR");
        Message first = to(Role.WRANGLER).get(0);
        assertThat(first.subject()).isEqualTo(production.code + ": Alarm one.");
        assertThat(first.text()).startsWith("Alarm one.\n").contains("{portal}" + production.path("re-checks"));

        standing.add(alarm("two", Role.OFFICE));
        standing.add(alarm("three", Role.OFFICE, Role.WRANGLER));
        write();
        assertThat(to(Role.WRANGLER)).hasSize(2);
        assertThat(to(Role.OFFICE)).singleElement().satisfies(message -> {
            assertThat(message.subject()).isEqualTo(production.code + ": 2 alarms");
            assertThat(message.text()).contains("Alarm two.", "Alarm three.").doesNotContain("Alarm one.");
        });
        standing.clear();
        write();
        standing.add(alarm("one", Role.WRANGLER));
        write();
        assertThat(to(Role.WRANGLER)).as("the same alarm").hasSize(2);
        standing.add(alarm("one again", Role.WRANGLER));
        write();
        assertThat(to(Role.WRANGLER)).hasSize(3);
    }

    @Test
    void whoWasMutedIsToldAfterwardsOfWhatStillStands() {
        subscriptions.choose(production.as(Role.WRANGLER), new Subscription(true, true, false, true, 0));
        standing.add(alarm("over", Role.WRANGLER));
        write();
        standing.clear();
        standing.add(alarm("standing", Role.WRANGLER));
        write();
        assertThat(to(Role.WRANGLER)).isEmpty();
        subscriptions.choose(production.as(Role.WRANGLER), new Subscription(true, true, false, false, 1));
        write();
        assertThat(to(Role.WRANGLER))
                .singleElement()
                .extracting(Message::text)
                .asString()
                .contains("Alarm standing.");
    }

    @Test
    void anAlarmWaitsForTheEndOfQuietHoursUnlessThePersonIsToBeWoken() {
        clock.set(Instant.parse("2031-03-04T23:00:00Z"));
        quiet(Role.WRANGLER, false);
        quiet(Role.ADMINISTRATOR, true);
        standing.add(alarm("at night", Role.WRANGLER));
        write();
        assertThat(to(Role.WRANGLER).get(0).notBefore()).isEqualTo(Instant.parse("2031-03-05T07:00:00Z"));
        assertThat(to(Role.ADMINISTRATOR).get(0).notBefore()).isEqualTo(Instant.parse("2031-03-04T23:00:00Z"));
    }

    @Test
    void theWeeksLetterComesOnMondayMorningByTheProductionsClocks() {
        production.day(unit, 1, "PLANNED");
        clock.set(TestProduction.FIRST_DATE
                .atTime(7, 59)
                .atZone(ZoneId.of("Europe/Lisbon"))
                .toInstant());
        write();
        assertThat(all()).isEmpty();
        clock.goOn(Duration.ofMinutes(1));
        write();
        clock.goOn(Duration.ofHours(3));
        write();
        assertThat(all()).extracting(Message::personName).containsExactlyInAnyOrder("OFFICE", "ADMINISTRATOR");
        assertThat(to(Role.OFFICE).get(0).subject()).isEqualTo(production.code + ": the week from Mon 3 Mar 2031");
        assertThat(to(Role.OFFICE).get(0).text()).startsWith("One day is to be shot this week.");
        clock.goOn(Duration.ofDays(1));
        write();
        assertThat(all()).as("on Tuesday").hasSize(2);
        clock.goOn(Duration.ofDays(6));
        write();
        assertThat(to(Role.OFFICE)).as("a week later").hasSize(2);
    }

    @Test
    void fourWeeksAfterTheLastDayTheWeeksLettersEnd() {
        production.day(unit, 1, "WRAPPED");
        clock.set(TestProduction.FIRST_DATE
                .plusDays(21)
                .atTime(12, 0)
                .atZone(ZoneId.of("Europe/Lisbon"))
                .toInstant());
        write();
        assertThat(to(Role.OFFICE)).hasSize(1);
        clock.goOn(Duration.ofDays(7));
        write();
        assertThat(to(Role.OFFICE)).hasSize(1);
    }

    private UUID wrapped(UUID ofUnit, int number) {
        UUID day = production.day(ofUnit, number, "SHOOTING");
        states.wrap(production.as(Role.OFFICE), day);
        // The portal noted its own time.
        jdbc.sql("update mail_wrapped_day set wrapped_at = ? where day_id = ?")
                .params(java.sql.Timestamp.from(clock.instant()), day)
                .update();
        return day;
    }

    private void quiet(Role role, boolean wakes) {
        jdbc.sql("update mail_recipient set quiet_from = ?, quiet_until = ?, wakes = ? where person_id = ?")
                .params(
                        Time.valueOf(LocalTime.of(22, 0)),
                        Time.valueOf(LocalTime.of(7, 0)),
                        wakes,
                        production.as(role).personId())
                .update();
    }

    private void write() {
        transaction.executeWithoutResult(status -> mailings.write(production.id));
    }

    private List<Message> all() {
        return new OutboxList(jdbc)
                .page(
                        production.id,
                        new OutboxList.Wanted("", "", "", new Listing.Order<>(OutboxList.Column.WRITTEN, true)),
                        1)
                .rows();
    }

    private List<Message> to(Role role) {
        return all().stream()
                .filter(message -> message.personName().equals(role.name()))
                .toList();
    }

    private int told(String about) {
        return jdbc.sql("select count(*) from mail_told where about = ?")
                .param(about)
                .query(Integer.class)
                .single();
    }

    private Alarm alarm(String key, Role... roles) {
        return new Alarm(key, Set.of(roles), "mail.said", List.of("Alarm " + key + "."), "re-checks", clock.instant());
    }
}

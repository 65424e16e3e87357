package rollbook.mail;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rollbook.forecast.OrderFlag;
import rollbook.forecast.StorageOutlook;
import rollbook.inventory.HireReturn;
import rollbook.post.PostStanding;
import rollbook.production.Alarm;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.purchase.PurchaseOrder.State;
import rollbook.schedule.DayState;
import rollbook.schedule.ShootingDay;
import rollbook.verification.ProofSummary;
import rollbook.verification.Rechecks;

/** What a letter says to whom. */
class DraftsTests {
    /** A Monday. */
    private static final LocalDate TODAY = LocalDate.of(2026, 7, 13);

    private static final ShootingDay MAIN = day("Main unit", 3, 0, DayState.WRAPPED);
    private static final ShootingDay SECOND = day("Second unit", 2, 0, DayState.WRAPPED);

    private final Facts facts = new Facts(
            TODAY,
            proof(2, 3),
            new PostStanding(
                    "Post house",
                    7,
                    5,
                    4,
                    List.of(new PostStanding.Medium(UUID.randomUUID(), "SHUTTLE-02", 1, "it is late")),
                    List.of(),
                    List.of(),
                    List.of(new PostStanding.Medium(UUID.randomUUID(), "SHUTTLE-03", 1, "read it")),
                    List.of()),
            new StorageOutlook(
                    "The tape runs out.",
                    Instant.EPOCH,
                    Instant.EPOCH,
                    TODAY,
                    TODAY.plusDays(30),
                    List.of(leg("Tape", true), leg("Shuttle", false)),
                    null),
            List.of(
                    ordered(1, State.PART_ARRIVED, -1),
                    ordered(2, State.PLACED, 0),
                    ordered(3, State.PLACED, 7),
                    ordered(4, State.PLACED, 8),
                    ordered(5, State.PROPOSED, null),
                    ordered(6, State.APPROVED, null)),
            List.of(
                    hire("DRIVE-1", "Larkfield", -1),
                    hire("CARD-1", "Larkfield", 2),
                    hire("CARD-2", "Larkfield", 2),
                    hire("CARD-9", "", 2),
                    hire("CARD-3", "Larkfield", 8),
                    hire("CARD-4", "Larkfield", 15)),
            new Rechecks.Pressing(1, 2, "SHUTTLE-01"),
            "It costs.",
            List.of(alarm("1", Role.WRANGLER), alarm("2", Role.OFFICE)),
            List.of(
                    day("Main unit", 4, 0, DayState.PLANNED),
                    day("Main unit", 8, 6, DayState.PLANNED),
                    day("Main unit", 9, 7, DayState.PLANNED)));

    @ParameterizedTest
    @CsvSource({
        "WRANGLER, alarms asked clear held waiting proof re-checks",
        "OFFICE, alarms asked proof flags cover decide arrivals hire",
        "POST, asked held proof post flags cover arrivals re-checks",
        "READER, proof flags cover",
        "ADMINISTRATOR, alarms asked clear held waiting proof post flags cover decide arrivals hire re-checks",
    })
    void aDigestHoldsWhatIsTheReadersToKnowAndToDo(Role role, String chapters) {
        assertThat(titles(Drafts.digest(facts, List.of(MAIN), member(role)))).isEqualTo(chapters);
    }

    @Test
    void whoHasTwoRolesReadsEachThingOnce() {
        assertThat(titles(Drafts.digest(facts, List.of(MAIN), member(Role.WRANGLER, Role.POST))))
                .isEqualTo("alarms asked clear held waiting proof post flags cover arrivals re-checks");
    }

    @Test
    void theFirstLineSaysWhichDaysAreWrappedThenAlarmsThenTheRolesOwnAnswer() {
        Draft wrangler = Drafts.digest(facts, List.of(MAIN, SECOND), member(Role.WRANGLER));
        assertThat(wrangler.sentences())
                .containsExactly(
                        Said.of(
                                "mail.digest.wrapped",
                                List.of(Said.of("mail.day", "Main unit", 3), Said.of("mail.day", "Second unit", 2)),
                                2),
                        Said.of("mail.alarms-stand", 1),
                        // Two ready and one cleared; three held and one with a bad copy.
                        Said.of("mail.digest.cards", 3, 4));
        assertThat(Drafts.digest(facts, List.of(MAIN), member(Role.OFFICE))
                        .sentences()
                        .get(2))
                .isEqualTo(Said.text("The tape runs out."));
        assertThat(Drafts.digest(facts, List.of(MAIN), member(Role.POST)).sentences())
                .containsExactly(
                        Said.of("mail.digest.wrapped", List.of(Said.of("mail.day", "Main unit", 3)), 1),
                        Said.of("mail.proven", 12, 14, 7),
                        Said.of("mail.post.received", 5, 7, 4));
    }

    @Test
    void aDigestLooksAWeekAheadAndForgetsNothingThatIsLate() {
        Draft digest = Drafts.digest(facts, List.of(MAIN), member(Role.OFFICE));
        assertThat(said(digest, "arrivals"))
                .containsExactly(
                        Said.of("mail.arrival.late", 1, 2, "Larkfield", TODAY.minusDays(1)),
                        Said.of("mail.arrival", 2, 2, "Larkfield", TODAY),
                        Said.of("mail.arrival", 3, 2, "Larkfield", TODAY.plusDays(7)));
        assertThat(said(digest, "decide"))
                .containsExactly(
                        Said.of("mail.order.proposed", 5, 3, "Larkfield"),
                        Said.of("mail.order.approved", 6, 3, "Larkfield"));
        assertThat(said(digest, "hire"))
                .containsExactly(
                        Said.of("mail.hire.late", 1, "DRIVE-1", "Larkfield", TODAY.minusDays(1)),
                        Said.of("mail.hire", 1, "CARD-9", Said.of("mail.hire.supplier"), TODAY.plusDays(2)),
                        Said.of("mail.hire", 2, "CARD-1", "Larkfield", TODAY.plusDays(2)));
    }

    @Test
    void whatIsAmissAtPostIsNamedAndTheRestCounted() {
        assertThat(said(Drafts.digest(facts, List.of(MAIN), member(Role.POST)), "post"))
                .containsExactly(
                        Said.of("mail.post.received", 5, 7, 4),
                        Said.of("mail.post.medium", "SHUTTLE-02", "it is late"),
                        Said.of("mail.post.to-check", 1));
    }

    @Test
    void ofManyThingsTenAreNamedAndTheRestIsCounted() {
        Facts many = bare(proof(0, 13), new Rechecks.Pressing(0, 0, null));
        Draft digest = Drafts.digest(many, List.of(MAIN), member(Role.WRANGLER));
        assertThat(said(digest, "held")).hasSize(11).endsWith(Said.of("mail.more", 4));
        assertThat(titles(digest)).doesNotContain("re-checks", "alarms");
    }

    @Test
    void withoutAForecastTheOfficeIsToldSo() {
        Facts none = bare(proof(0, 0), new Rechecks.Pressing(0, 0, "SHUTTLE-01"));
        Draft digest = Drafts.digest(none, List.of(MAIN), member(Role.OFFICE));
        assertThat(digest.sentences()).contains(Said.of("mail.no-forecast"));
        assertThat(titles(digest)).isEqualTo("asked proof");
    }

    @Test
    void theWeeksLetterHasTheWeeksDaysAndAllThatIsOnOrder() {
        Draft weekly = Drafts.weekly(facts, member(Role.OFFICE));
        assertThat(weekly.subject()).isEqualTo(Said.of("mail.weekly.subject", "TIDE", TODAY));
        assertThat(weekly.sentences())
                .containsExactly(
                        Said.of("mail.weekly.days", 2),
                        Said.of("mail.alarms-stand", 1),
                        Said.text("The tape runs out."));
        assertThat(titles(weekly)).isEqualTo("alarms days flags cover decide orders hire costs post re-checks proof");
        assertThat(said(weekly, "orders")).hasSize(4);
        assertThat(said(weekly, "hire")).as("what goes back within two weeks").hasSize(4);
    }

    @Test
    void anAlarmsLetterSaysItInItsSubject() {
        Draft one = Drafts.alarm(List.of(alarm("1", Role.POST)), member(Role.POST));
        Said says = Said.of("mail.said", "alarm 1");
        assertThat(one.subject()).isEqualTo(Said.of("mail.alarm.subject", "TIDE", says));
        assertThat(one.sentences()).containsExactly(says);
        Draft two = Drafts.alarm(List.of(alarm("1", Role.POST), alarm("2", Role.POST)), member(Role.POST));
        assertThat(two.subject()).isEqualTo(Said.of("mail.alarm.subject.many", "TIDE", 2));
        assertThat(said(two, "alarms")).hasSize(2);
    }

    private static String titles(Draft draft) {
        return String.join(
                " ",
                draft.chapters().stream()
                        .map(chapter -> chapter.titleKey().replace("mail.chapter.", ""))
                        .toList());
    }

    private static List<Said> said(Draft draft, String title) {
        return draft.chapters().stream()
                .filter(chapter -> chapter.titleKey().equals("mail.chapter." + title))
                .flatMap(chapter -> chapter.entries().stream())
                .map(Draft.Entry::said)
                .toList();
    }

    private static Membership member(Role first, Role... more) {
        return new Membership(
                UUID.randomUUID(),
                "TIDE",
                "The Tide",
                ZoneId.of("Europe/Lisbon"),
                "EUR",
                UUID.randomUUID(),
                "Somebody",
                EnumSet.of(first, more));
    }

    private static ProofSummary proof(int ready, int held) {
        return new ProofSummary(
                7,
                lines("R", ready),
                lines("C", 1),
                lines("B", 1),
                lines("H", held),
                lines("X", 1),
                List.of(),
                Map.of(),
                14,
                12,
                1,
                0,
                List.of(),
                List.of(new ProofSummary.Override(
                        UUID.randomUUID(), UUID.randomUUID(), "A001", "CARD-1", "Wrangler", null)),
                List.of(),
                List.of());
    }

    private static List<ProofSummary.RollLine> lines(String kind, int count) {
        return IntStream.range(0, count)
                .mapToObj(number -> new ProofSummary.RollLine(UUID.randomUUID(), kind + number, "CARD", "so it is"))
                .toList();
    }

    private static StorageOutlook.Leg leg(String name, boolean waitsForSomebody) {
        return new StorageOutlook.Leg(
                UUID.randomUUID(),
                name,
                name + " so.",
                OrderFlag.NO_SUPPLY,
                waitsForSomebody,
                0,
                null,
                null,
                0,
                0,
                null,
                null);
    }

    private static Facts bare(ProofSummary proof, Rechecks.Pressing rechecks) {
        return new Facts(
                TODAY,
                proof,
                new PostStanding(null, 0, 0, 0, List.of(), List.of(), List.of(), List.of(), List.of()),
                null,
                List.of(),
                List.of(),
                rechecks,
                "It costs.",
                List.of(),
                List.of());
    }

    private static Facts.Ordered ordered(int number, State state, @Nullable Integer daysFromToday) {
        return new Facts.Ordered(
                number,
                "Larkfield",
                state,
                3,
                2,
                daysFromToday == null ? null : TODAY.plusDays(daysFromToday),
                "orders/" + number);
    }

    private static HireReturn hire(String code, String supplier, int daysFromToday) {
        return new HireReturn(UUID.randomUUID(), code, "", supplier, TODAY.plusDays(daysFromToday), Instant.EPOCH);
    }

    private static Alarm alarm(String key, Role role) {
        return new Alarm(key, Set.of(role), "mail.said", List.of("alarm " + key), "today", Instant.EPOCH);
    }

    private static ShootingDay day(String unit, int number, int daysFromToday, DayState state) {
        return new ShootingDay(
                UUID.randomUUID(), UUID.randomUUID(), unit, number, TODAY.plusDays(daysFromToday), state, "", 1);
    }
}

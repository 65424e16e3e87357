package rollbook.hire;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import rollbook.hire.HireTerms.Period;
import rollbook.hire.TermsEntry.Act;

class TermsHistoryTests {
    private static final UUID SUPPLIER = new UUID(0, 9);
    private static final UUID ONE = new UUID(0, 1);
    private static final UUID OTHER = new UUID(0, 2);
    private static final LocalDate START = LocalDate.of(2026, 3, 2);
    private static final LocalDate DUE = LocalDate.of(2026, 3, 16);
    private static final LocalDate LATER = LocalDate.of(2026, 3, 23);

    private static TermsEntry entry(int number, Act act, LocalDate dueOn, int weeks, Map<UUID, Long> rates) {
        return new TermsEntry(
                number, act, SUPPLIER, "Hire house", "", START, dueOn, weeks, null, "", rates, Instant.EPOCH, "Office");
    }

    private static final TermsEntry AGREED = entry(1, Act.AGREED, DUE, 1, Map.of(ONE, 100L, OTHER, 200L));

    private static HireTerms of(UUID item, TermsEntry... entries) {
        return new TermsHistory(List.of(entries)).of(item).orElseThrow();
    }

    @Test
    void whatIsAgreedCounts() {
        assertThat(of(OTHER, AGREED)).isEqualTo(new HireTerms(START, 1, null, List.of(new Period(DUE, 200))));
        assertThat(new TermsHistory(List.of(AGREED)).of(new UUID(0, 3))).isEmpty();
    }

    @Test
    void anItemThatIsNotExtendedStaysDueWhenItWas() {
        TermsEntry extended = entry(2, Act.EXTENDED, LATER, 1, Map.of(ONE, 90L));
        assertThat(of(ONE, AGREED, extended).periods()).containsExactly(new Period(DUE, 100), new Period(LATER, 90));
        assertThat(of(OTHER, AGREED, extended).dueOn()).isEqualTo(DUE);
    }

    @Test
    void aCorrectionStandsInThePlaceOfTheNewestEntryInForce() {
        TermsEntry extended = entry(2, Act.EXTENDED, LATER, 1, Map.of(ONE, 90L));
        TermsEntry corrected = entry(3, Act.CORRECTED, LATER.plusDays(1), 2, Map.of(ONE, 95L));
        assertThat(of(ONE, AGREED, extended, corrected))
                .isEqualTo(new HireTerms(
                        START, 2, null, List.of(new Period(DUE, 100), new Period(LATER.plusDays(1), 95))));
        assertThat(of(OTHER, AGREED, extended, corrected).minimumWeeks())
                .as("the minimum is the agreement’s, so the newest says it for all")
                .isEqualTo(2);
        TermsEntry correctedAtOnce = entry(2, Act.CORRECTED, DUE, 1, Map.of(ONE, 110L));
        assertThat(of(ONE, AGREED, correctedAtOnce).weekMinorUnits()).isEqualTo(110);
        assertThat(new TermsHistory(List.of(AGREED, correctedAtOnce)).of(OTHER)).isEmpty();
    }

    @Test
    void whatIsTakenBackCountsNoMoreAndWhatWasBeforeItCountsAgain() {
        TermsEntry extended = entry(2, Act.EXTENDED, LATER, 1, Map.of(ONE, 90L));
        TermsEntry takenBack = entry(3, Act.TAKEN_BACK, LATER, 1, Map.of());
        assertThat(of(ONE, AGREED, extended, takenBack).dueOn()).isEqualTo(DUE);

        TermsHistory all =
                new TermsHistory(List.of(AGREED, extended, takenBack, entry(4, Act.TAKEN_BACK, DUE, 1, Map.of())));
        assertThat(all.isWithdrawn()).isTrue();
        assertThat(all.of(ONE)).isEmpty();
        assertThat(all.newest().number()).isEqualTo(4);
    }
}

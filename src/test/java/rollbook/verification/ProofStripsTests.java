package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.verification.ProofStrips.Mark.ERASED;
import static rollbook.verification.ProofStrips.Mark.FAILED;
import static rollbook.verification.ProofStrips.Mark.NO_COPY;
import static rollbook.verification.ProofStrips.Mark.PROVEN;
import static rollbook.verification.ProofStrips.Mark.UNKNOWN;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rollbook.manifest.Verdict;
import rollbook.production.Leg;
import rollbook.production.MediaKind;
import rollbook.production.Rendition;
import rollbook.verification.ProofStrips.CopyFact;

class ProofStripsTests {
    private static final Leg SHUTTLE = leg(1, 5);
    private static final Leg TAPE = leg(2, null);
    private static final List<Leg> LEGS = List.of(SHUTTLE, TAPE);

    @Test
    void eachRollHasItsMarkAtTheSamePlaceInEachStrip() {
        ProofStrips strips = ProofStrips.of(
                LEGS,
                List.of(
                        fact(1, 1, SHUTTLE, Verdict.PROVEN),
                        fact(1, 1, TAPE, null),
                        fact(1, 2, TAPE, Verdict.FAILED),
                        fact(1, 3, null, null)));

        assertThat(strips.days()).hasSize(1);
        assertThat(strips.days().get(0).strips().get(0).marks()).containsExactly(PROVEN, NO_COPY, NO_COPY);
        assertThat(strips.days().get(0).strips().get(1).marks()).containsExactly(UNKNOWN, FAILED, NO_COPY);
        assertThat(strips.rolls()).isEqualTo(3);
        assertThat(strips.proven(0)).isEqualTo(1);
    }

    @Test
    void ofSeveralCopiesOnALegTheBestOneCountsAndAnErasedOneOnlyAlone() {
        ProofStrips strips = ProofStrips.of(
                LEGS,
                List.of(
                        fact(1, 1, SHUTTLE, Verdict.FAILED),
                        fact(1, 1, SHUTTLE, Verdict.PROVEN),
                        erased(1, 1, TAPE),
                        fact(1, 1, TAPE, null),
                        erased(1, 2, TAPE)));

        assertThat(strips.days().get(0).strips().get(0).marks()).containsExactly(PROVEN, NO_COPY);
        assertThat(strips.days().get(0).strips().get(1).marks()).containsExactly(UNKNOWN, ERASED);
    }

    @Test
    void aDayIsSettledWhenAllIsProvenAndOnlyMediaThatComeBackWereErased() {
        assertThat(day(fact(1, 1, SHUTTLE, Verdict.PROVEN), fact(1, 1, TAPE, Verdict.PROVEN))
                        .isSettled())
                .isTrue();
        assertThat(day(erased(1, 1, SHUTTLE), fact(1, 1, TAPE, Verdict.PROVEN)).isSettled())
                .isTrue();
        assertThat(day(fact(1, 1, SHUTTLE, Verdict.PROVEN), erased(1, 1, TAPE)).isSettled())
                .isFalse();
        assertThat(day(fact(1, 1, SHUTTLE, Verdict.PROVEN), fact(1, 1, TAPE, Verdict.CONSISTENT))
                        .isSettled())
                .isFalse();
        assertThat(day(fact(1, 1, SHUTTLE, Verdict.PROVEN)).isSettled()).isFalse();
    }

    @Test
    void daysStandAsTheyWereGivenAndMarksAreCounted() {
        ProofStrips strips = ProofStrips.of(
                LEGS,
                List.of(
                        fact(2, 4, TAPE, Verdict.PROVEN),
                        fact(2, 5, TAPE, Verdict.PROVEN),
                        fact(2, 6, TAPE, Verdict.FAILED),
                        fact(1, 1, TAPE, Verdict.PROVEN)));

        assertThat(strips.days().stream().map(ProofStrips.Day::number)).containsExactly(2, 1);
        assertThat(strips.days().get(0).strips().get(1).counts()).isEqualTo(Map.of(PROVEN, 2L, FAILED, 1L));
    }

    private static ProofStrips.Day day(CopyFact... facts) {
        return ProofStrips.of(LEGS, List.of(facts)).days().get(0);
    }

    private static CopyFact fact(int day, int roll, @Nullable Leg leg, @Nullable Verdict verdict) {
        return new CopyFact(
                new UUID(1, roll),
                new UUID(2, day),
                day,
                "Main",
                LocalDate.of(2026, 3, day),
                leg == null ? null : leg.id(),
                false,
                verdict);
    }

    private static CopyFact erased(int day, int roll, Leg leg) {
        CopyFact fact = fact(day, roll, leg, Verdict.PROVEN);
        return new CopyFact(fact.rollId(), fact.dayId(), day, "Main", fact.date(), leg.id(), true, fact.verdict());
    }

    private static Leg leg(int id, @Nullable Integer returnsAfterDays) {
        return new Leg(
                new UUID(0, id),
                "Leg " + id,
                MediaKind.DRIVE,
                new UUID(0, 9),
                "Set",
                Rendition.AS_RECORDED,
                100,
                returnsAfterDays,
                true,
                0);
    }
}

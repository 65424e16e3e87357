package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rollbook.manifest.Verdict;
import rollbook.verification.VerdictHistory.Cause;
import rollbook.verification.VerdictHistory.Step;

/** What was new at each verdict, told from the record alone. Hours stand for instants, numbers for parts. */
class VerdictHistoryTests {
    private static final UUID COPY = new UUID(1, 1);
    private static final UUID OTHER_COPY = new UUID(1, 2);

    @Test
    void aCardManifestThatArrivesAfterTheCopiesIsNamedAsWhatWasNew() {
        RollDocument copy = said(1, Subject.COPY, COPY, 14, null);
        RollDocument card = said(2, Subject.CARD, null, 15, null);

        List<Step> steps = VerdictHistory.of(
                List.of(verdict(Verdict.CONSISTENT, 1, 1, 14), verdict(Verdict.PROVEN, 2, 1, 15)), List.of(copy, card));

        assertThat(steps).extracting(Step::cause).containsExactly(Cause.FIRST, Cause.SOURCE_CAME);
        assertThat(steps.get(1).reference()).isEqualTo(card);
        assertThat(steps.get(1).evidence()).isEqualTo(copy);
    }

    @Test
    void aCorrectedDocumentIsNamedWithTheOneWhoCorrectedIt() {
        RollDocument card = said(2, Subject.CARD, null, 13, null);
        RollDocument wrong = said(1, Subject.COPY, COPY, 14, 15);

        List<Step> steps = VerdictHistory.of(
                List.of(verdict(Verdict.PROVEN, 2, 1, 14), verdict(Verdict.UNKNOWN, null, null, 15)),
                List.of(card, wrong));

        assertThat(steps.get(1).cause()).isEqualTo(Cause.DOCUMENT_CORRECTED);
        assertThat(steps.get(1).corrected()).isEqualTo(wrong);
        assertThat(steps.get(0).evidence()).as("as it was at the time").isEqualTo(wrong);
    }

    @Test
    void anEarlierDocumentSpeaksAgainWhenANewerOneIsCorrected() {
        RollDocument card = said(3, Subject.CARD, null, 12, null);
        RollDocument first = said(1, Subject.COPY, COPY, 13, null);
        RollDocument second = said(2, Subject.COPY, COPY, 14, 15);

        List<Step> steps = VerdictHistory.of(
                List.of(
                        verdict(Verdict.PROVEN, 3, 1, 13),
                        verdict(Verdict.FAILED, 3, 2, 14),
                        verdict(Verdict.PROVEN, 3, 1, 15)),
                List.of(card, first, second));

        assertThat(steps)
                .extracting(Step::cause)
                .containsExactly(Cause.FIRST, Cause.NEWER_DOCUMENT, Cause.DOCUMENT_CORRECTED);
        assertThat(steps.get(2).evidence()).isEqualTo(first);
        assertThat(steps.get(2).corrected()).isEqualTo(second);
    }

    @Test
    void aCardManifestThatIsTakenBackLeavesWhatItWasComparedWithBefore() {
        RollDocument copy = said(1, Subject.COPY, COPY, 14, null);
        RollDocument card = said(2, Subject.CARD, null, 13, 15);

        List<Step> steps = VerdictHistory.of(
                List.of(verdict(Verdict.PROVEN, 2, 1, 14), verdict(Verdict.CONSISTENT, 1, 1, 15)), List.of(card, copy));

        assertThat(steps.get(1).cause()).isEqualTo(Cause.REFERENCE_CORRECTED);
        assertThat(steps.get(1).corrected()).isEqualTo(card);
        assertThat(steps.get(1).reference()).isEqualTo(copy);
    }

    @Test
    void otherGroundsAndWhatHappenedToTheCopyNeedNoDocument() {
        RollDocument card = said(2, Subject.CARD, null, 13, null);
        RollDocument copy = said(1, Subject.COPY, COPY, 14, null);
        RollDocument twice = said(1, Subject.COPY, OTHER_COPY, 15, null);

        List<Step> steps = VerdictHistory.of(
                List.of(
                        verdict(Verdict.PROVEN, 2, 1, 14),
                        verdict(Verdict.CONSISTENT, 2, 1, 15),
                        verdict(Verdict.UNKNOWN, null, null, 16),
                        verdict(Verdict.PROVEN, 2, 1, 17)),
                List.of(card, copy, twice));

        assertThat(steps)
                .extracting(Step::cause)
                .containsExactly(Cause.FIRST, Cause.OTHER_GROUNDS, Cause.NO_DOCUMENT, Cause.NEWER_DOCUMENT);
        assertThat(steps).extracting(Step::corrected).containsOnlyNulls();
    }

    @Test
    void whatIsSaidAnewAfterACorrectionIsNotMissed() {
        RollDocument card = said(2, Subject.CARD, null, 13, null);
        RollDocument wrong = said(1, Subject.COPY, COPY, 14, 15);
        RollDocument again = said(1, Subject.COPY, COPY, 15, null);
        RollDocument newer = said(4, Subject.COPY, COPY, 16, null);

        List<Step> steps = VerdictHistory.of(
                List.of(verdict(Verdict.PROVEN, 2, 1, 14), verdict(Verdict.PROVEN, 2, 4, 16)),
                List.of(card, wrong, again, newer));

        assertThat(steps.get(1).cause()).isEqualTo(Cause.NEWER_DOCUMENT);
        assertThat(steps.get(1).corrected()).isNull();
    }

    @Test
    void nothingJudgedIsNothingToTell() {
        assertThat(VerdictHistory.of(List.of(), List.of(said(2, Subject.CARD, null, 13, null))))
                .isEmpty();
    }

    private static CopyVerdict verdict(
            Verdict verdict, @Nullable Integer reference, @Nullable Integer evidence, int hour) {
        return new CopyVerdict(
                (long) hour,
                COPY,
                verdict,
                List.of(),
                reference == null ? null : new UUID(0, reference),
                evidence == null ? null : new UUID(0, evidence),
                CopyVerdict.Counts.NONE,
                at(hour),
                null);
    }

    private static RollDocument said(
            int part, Subject subject, @Nullable UUID copyId, int hour, @Nullable Integer correctedHour) {
        return new RollDocument(
                new UUID(0, part),
                new UUID(2, part),
                "list-" + part,
                at(hour),
                "A wrangler",
                subject,
                copyId,
                copyId == null ? null : "SHUTTLE-1",
                at(hour),
                "A wrangler",
                correctedHour == null ? null : at(correctedHour),
                correctedHour == null ? null : "Post",
                correctedHour == null ? null : "other medium");
    }

    private static Instant at(int hour) {
        return Instant.parse("2026-06-01T00:00:00Z").plusSeconds(3_600L * hour);
    }
}

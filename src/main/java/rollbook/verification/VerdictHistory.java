package rollbook.verification;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Why each verdict on one copy, or on a roll's decoded files, followed the one before it: a pure function of the record. */
final class VerdictHistory {
    private VerdictHistory() {}

    /** What was new when a verdict was given. */
    enum Cause {
        FIRST,
        /** A manifest of the card came, or of the encoder's output, and is now what the copy is compared with. */
        SOURCE_CAME,
        /** What the copy was compared with was said to describe something else. */
        REFERENCE_CORRECTED,
        REFERENCE_CHANGED,
        NEWER_DOCUMENT,
        /** The document that spoke for the copy was said to describe something else. */
        DOCUMENT_CORRECTED,
        /** The same documents, in the light of others. */
        OTHER_GROUNDS,
        /** Nothing was sent: something happened to the copy, as the reasons say. */
        NO_DOCUMENT
    }

    /**
     * One verdict with the documents that it rests on.
     *
     * @param corrected what is missed since somebody corrected what it describes
     */
    record Step(
            CopyVerdict verdict,
            Cause cause,
            @Nullable RollDocument reference,
            @Nullable RollDocument evidence,
            @Nullable RollDocument corrected) {}

    /** @param verdicts on the same thing, oldest first */
    static List<Step> of(List<CopyVerdict> verdicts, List<RollDocument> documents) {
        List<Step> steps = new ArrayList<>();
        Step before = null;
        for (CopyVerdict verdict : verdicts) {
            before = step(before, verdict, documents);
            steps.add(before);
        }
        return steps;
    }

    private static Step step(@Nullable Step before, CopyVerdict verdict, List<RollDocument> documents) {
        RollDocument reference = referenceOf(verdict, documents);
        RollDocument evidence = evidenceOf(verdict, documents);
        if (verdict.evidencePartId() == null) {
            RollDocument lost = before == null ? null : corrected(before.evidence(), verdict, documents);
            Cause cause = lost == null ? Cause.NO_DOCUMENT : Cause.DOCUMENT_CORRECTED;
            return new Step(verdict, cause, reference, evidence, lost);
        }
        if (before == null || before.verdict().evidencePartId() == null) {
            return new Step(verdict, before == null ? Cause.FIRST : Cause.NEWER_DOCUMENT, reference, evidence, null);
        }
        if (!Objects.equals(before.verdict().referencePartId(), verdict.referencePartId())) {
            RollDocument lost = corrected(before.reference(), verdict, documents);
            boolean source = reference != null && reference.subject() != Subject.COPY;
            Cause cause =
                    lost != null ? Cause.REFERENCE_CORRECTED : source ? Cause.SOURCE_CAME : Cause.REFERENCE_CHANGED;
            return new Step(verdict, cause, reference, evidence, lost);
        }
        if (!Objects.equals(before.verdict().evidencePartId(), verdict.evidencePartId())) {
            RollDocument lost = corrected(before.evidence(), verdict, documents);
            return new Step(
                    verdict, lost == null ? Cause.NEWER_DOCUMENT : Cause.DOCUMENT_CORRECTED, reference, evidence, lost);
        }
        return new Step(verdict, Cause.OTHER_GROUNDS, reference, evidence, null);
    }

    /** The document, if what it describes was corrected before the verdict was given and nobody said the same anew. */
    private static @Nullable RollDocument corrected(
            @Nullable RollDocument document, CopyVerdict verdict, List<RollDocument> documents) {
        if (document == null) {
            return null;
        }
        List<RollDocument> saidThen = documents.stream()
                .filter(one -> one.partId().equals(document.partId()) && one.subject() == document.subject())
                .filter(one -> Objects.equals(one.copyId(), document.copyId()))
                .filter(one -> !one.saidAt().isAfter(verdict.judgedAt()))
                .toList();
        boolean stoodThen = saidThen.stream()
                .anyMatch(one -> one.correctedAt() == null || one.correctedAt().isAfter(verdict.judgedAt()));
        return stoodThen || saidThen.isEmpty() ? null : saidThen.get(saidThen.size() - 1);
    }

    private static @Nullable RollDocument evidenceOf(CopyVerdict verdict, List<RollDocument> documents) {
        return newest(
                documents.stream()
                        .filter(one -> one.partId().equals(verdict.evidencePartId()))
                        .filter(one -> verdict.copyId() == null
                                ? one.subject() == Subject.DECODED
                                : verdict.copyId().equals(one.copyId()))
                        .toList(),
                verdict);
    }

    /** What the part was then said to be: of the card or the encoder before a copy, as the judging has it. */
    private static @Nullable RollDocument referenceOf(CopyVerdict verdict, List<RollDocument> documents) {
        UUID part = verdict.referencePartId();
        List<RollDocument> said =
                documents.stream().filter(one -> one.partId().equals(part)).toList();
        RollDocument source = newest(
                said.stream()
                        .filter(one -> one.subject() == Subject.CARD || one.subject() == Subject.ENCODED_OUTPUT)
                        .filter(one ->
                                one.correctedAt() == null || one.correctedAt().isAfter(verdict.judgedAt()))
                        .toList(),
                verdict);
        return source == null
                ? newest(
                        said.stream()
                                .filter(one -> one.subject() == Subject.COPY)
                                .toList(),
                        verdict)
                : source;
    }

    /** Of several that said the same, the one said last before the verdict; a clock's step back must not hide it. */
    private static @Nullable RollDocument newest(List<RollDocument> said, CopyVerdict verdict) {
        List<RollDocument> before = said.stream()
                .filter(one -> !one.saidAt().isAfter(verdict.judgedAt()))
                .toList();
        List<RollDocument> of = before.isEmpty() ? said : before;
        return of.isEmpty() ? null : of.get(of.size() - 1);
    }
}

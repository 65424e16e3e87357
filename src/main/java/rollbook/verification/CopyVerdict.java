package rollbook.verification;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.FileFinding;
import rollbook.manifest.ReferenceFacts.RoundTrip;
import rollbook.manifest.Verdict;
import rollbook.manifest.VerdictReason;
import rollbook.production.Rendition;

/**
 * What was proven of a copy, or of a roll's decoded files, at a moment.
 *
 * @param id null for one that isn't on record yet
 * @param copyId null if it is about the decoded files, the round trip that proves the roll's encoding
 * @param reasons names of {@link rollbook.manifest.VerdictReason} or of {@link Reason}, some with a person behind them
 * @param checkedAt how old the document is that speaks for the copy, as it says or by its arrival; null if there is none
 */
record CopyVerdict(
        @Nullable Long id,
        @Nullable UUID copyId,
        Verdict verdict,
        List<String> reasons,
        @Nullable UUID referencePartId,
        @Nullable UUID evidencePartId,
        Counts counts,
        Instant judgedAt,
        @Nullable Instant checkedAt) {

    /** Reasons that don't come from comparing documents. */
    enum Reason {
        NO_EVIDENCE,
        WRITTEN_AGAIN,
        ERASED,
        /** No list of decoded files counts any more. */
        NOT_DECODED,
        /** Only equal digests of a list that states its algorithm told that of another. */
        ALGORITHM_BY_AGREEMENT,
        /** A person said which algorithm made the digests of a document. */
        ALGORITHM_SAID;

        /** The reason with the name of the person behind it, as it stands on record. */
        String by(String person) {
            return name() + ReasonKeys.PERSON_FOLLOWS + person;
        }
    }

    /** Numbers of files by what was found of them. */
    record Counts(
            long same,
            long different,
            long missing,
            long extra,
            long moved,
            long sizeOnly,
            long nameOnly,
            long listedTwice,
            long spelledOtherwise) {
        static final Counts NONE = new Counts(0, 0, 0, 0, 0, 0, 0, 0, 0);

        /** How many files were found so, in the order in which a person reads it; what wasn't found is left out. */
        public Map<FileFinding.Kind, Long> found() {
            Map<FileFinding.Kind, Long> found = new LinkedHashMap<>();
            found.put(FileFinding.Kind.SAME, same);
            found.put(FileFinding.Kind.DIFFERENT, different);
            found.put(FileFinding.Kind.MISSING, missing);
            found.put(FileFinding.Kind.EXTRA, extra);
            found.put(FileFinding.Kind.MOVED, moved);
            found.put(FileFinding.Kind.SPELLED_OTHERWISE, spelledOtherwise);
            found.put(FileFinding.Kind.SIZE_ONLY, sizeOnly);
            found.put(FileFinding.Kind.NAME_ONLY, nameOnly);
            found.put(FileFinding.Kind.LISTED_TWICE, listedTwice);
            found.values().removeIf(files -> files == 0);
            return found;
        }

        /** Files that don't agree with the reference. */
        long wrong() {
            return different + listedTwice;
        }

        /** Files of which there is anything to tell. */
        long notSame() {
            return different + missing + extra + moved + sizeOnly + nameOnly + listedTwice + spelledOtherwise;
        }
    }

    static CopyVerdict unknown(@Nullable UUID copyId, Reason reason, Instant now) {
        return new CopyVerdict(
                null, copyId, Verdict.UNKNOWN, List.of(reason.name()), null, null, Counts.NONE, now, null);
    }

    /** Whether the encoding of this copy was proven when it was judged. */
    RoundTrip roundTrip(Rendition rendition) {
        if (rendition == Rendition.AS_RECORDED) {
            return RoundTrip.NOT_NEEDED;
        }
        return reasons.contains(VerdictReason.ROUND_TRIP_PROVEN.name()) ? RoundTrip.PROVEN : RoundTrip.ABSENT;
    }

    /** Whether it says the same on the same grounds, whenever that was. */
    boolean saysTheSameAs(CopyVerdict other) {
        return verdict == other.verdict
                && reasons.equals(other.reasons)
                && Objects.equals(referencePartId, other.referencePartId)
                && Objects.equals(evidencePartId, other.evidencePartId)
                && counts.equals(other.counts);
    }
}

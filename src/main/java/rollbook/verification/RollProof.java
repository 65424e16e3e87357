package rollbook.verification;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.Verdict;
import rollbook.offload.Copy;
import rollbook.offload.Roll;

/**
 * What is proven of a roll, and by what.
 *
 * @param says what the card waits for, or where it is, in words
 * @param holds everything that holds the card, in words; empty unless it was copied and isn't cleared
 * @param holdsOnRecord the same in words that stay the same whatever language the pages speak
 * @param provenCopies how many copies are there that are proven whatever the policy
 * @param copies those that are there, and those on media that were erased since
 */
public record RollProof(
        Roll roll,
        CardStanding standing,
        String says,
        List<String> holds,
        List<String> holdsOnRecord,
        int provenCopies,
        List<CopyProof> copies) {

    /**
     * One copy.
     *
     * @param note the number that explains the verdict, such as "3 files differ"; may be empty
     * @param reasons names of the verdict's reasons; {@code reasonsInWords} say them
     * @param judgedAt null if nobody has judged the copy
     * @param checkedAt how old the document is that speaks for the copy; null if none does
     * @param evidence the document that speaks for the copy
     * @param reference the one that it is compared with
     */
    public record CopyProof(
            Copy copy,
            Verdict verdict,
            String note,
            List<String> reasons,
            List<String> reasonsInWords,
            @Nullable Instant judgedAt,
            @Nullable Instant checkedAt,
            @Nullable ProvingDocument evidence,
            @Nullable ProvingDocument reference) {}

    /** @param sha256 of its bytes, in lower-case hexadecimal */
    public record ProvingDocument(UUID id, String fileName, String sha256) {}

    /** Whether no document speaks of any copy, or of the card. */
    public boolean hasNoDocument() {
        return copies.stream().allMatch(copy -> copy.evidence() == null && copy.reference() == null);
    }
}

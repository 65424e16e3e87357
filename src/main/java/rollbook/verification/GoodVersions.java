package rollbook.verification;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.inventory.Condition;
import rollbook.manifest.FileFinding.Kind;
import rollbook.manifest.Verdict;
import rollbook.offload.Copy;
import rollbook.offload.Roll;
import rollbook.production.Rendition;
import rollbook.verification.Verdicts.Difference;

/** Which media hold a good version of a file that is bad on one copy, as far as anything was proven of them. */
final class GoodVersions {
    /** Files of which a copy doesn't hold what the reference says, or nobody knows whether it does. */
    private static final Set<Kind> NOT_GOOD =
            EnumSet.of(Kind.DIFFERENT, Kind.MISSING, Kind.LISTED_TWICE, Kind.SIZE_ONLY, Kind.NAME_ONLY);

    /** @param placeName null for the card itself, which may be anywhere on set */
    record Source(String itemCode, @Nullable String placeName) {}

    private record Holder(Source source, Set<String> notGood) {}

    private final List<Holder> holders;

    private GoodVersions(List<Holder> holders) {
        this.holders = holders;
    }

    /**
     * A copy counts if it wasn't erased, its medium is in good condition, it was compared with the same list, and all that it differs in
     * is known. The card counts while it still holds the roll.
     *
     * @param verdict on the bad copy
     * @param newest the newest verdict of each of the roll's copies
     * @param differences of those verdicts, as far as they were kept
     */
    static GoodVersions of(
            Roll roll,
            Copy bad,
            CopyVerdict verdict,
            List<Copy> copies,
            Map<UUID, CopyVerdict> newest,
            Map<Long, List<Difference>> differences) {
        List<Holder> holders = new ArrayList<>();
        for (Copy copy : copies) {
            CopyVerdict other = newest.get(copy.id());
            boolean comparable = other != null
                    && !copy.id().equals(bad.id())
                    && copy.rendition() == bad.rendition()
                    && !copy.isErased()
                    && copy.itemCondition() == Condition.GOOD
                    && other.verdict() != Verdict.UNKNOWN
                    && Objects.equals(other.referencePartId(), verdict.referencePartId());
            if (comparable) {
                List<Difference> known = differences.getOrDefault(other.id(), List.of());
                if (known.size() == other.counts().notSame()) {
                    holders.add(new Holder(new Source(copy.itemCode(), copy.placeName()), notGood(known)));
                }
            }
        }
        if (roll.onCard() && bad.rendition() == Rendition.AS_RECORDED) {
            holders.add(new Holder(new Source(roll.cardCode(), null), Set.of()));
        }
        return new GoodVersions(holders);
    }

    /** Whether something of the reference isn't on the copy as it should be, so that it must be copied again. */
    static boolean isToCopyAgain(Difference difference) {
        return isToCopyAgain(difference.kind());
    }

    static boolean isToCopyAgain(Kind kind) {
        return kind == Kind.DIFFERENT || kind == Kind.MISSING || kind == Kind.LISTED_TWICE;
    }

    /** What holds a good version; nothing for a file that need not be copied again. */
    List<Source> of(Difference difference) {
        if (!isToCopyAgain(difference)) {
            return List.of();
        }
        return holders.stream()
                .filter(holder -> !holder.notGood().contains(difference.path()))
                .map(Holder::source)
                .toList();
    }

    private static Set<String> notGood(List<Difference> differences) {
        Set<String> paths = new HashSet<>();
        differences.stream()
                .filter(difference -> NOT_GOOD.contains(difference.kind()))
                .forEach(difference -> paths.add(difference.path()));
        return paths;
    }
}

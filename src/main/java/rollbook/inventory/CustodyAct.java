package rollbook.inventory;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** What can happen to an item: the links of its chain of custody. */
public enum CustodyAct {
    REGISTERED("", Set.of(), Condition.GOOD),
    MOVED("move", Set.of(Condition.GOOD, Condition.QUARANTINED), null),
    QUARANTINED("quarantine", Set.of(Condition.GOOD), Condition.QUARANTINED),
    RELEASED("release", Set.of(Condition.QUARANTINED), Condition.GOOD),
    LOST("lost", Set.of(Condition.GOOD, Condition.QUARANTINED), Condition.LOST),
    /** Nobody can vouch for what happened meanwhile, so what is found stays in quarantine until somebody releases it. */
    FOUND("found", Set.of(Condition.LOST), Condition.QUARANTINED),
    RETIRED("retire", Set.of(Condition.GOOD, Condition.QUARANTINED, Condition.LOST), Condition.RETIRED),
    RETURNED("return", Set.of(Condition.GOOD, Condition.QUARANTINED), Condition.RETURNED),
    /** Registered by mistake, see {@link Withdrawals}. */
    WITHDRAWN("", Set.of(Condition.GOOD), Condition.RETIRED);

    private final String path;
    private final Set<Condition> from;
    private final @Nullable Condition to;

    CustodyAct(String path, Set<Condition> from, @Nullable Condition to) {
        this.path = path;
        this.from = from;
        this.to = to;
    }

    static Optional<CustodyAct> ofPath(String path) {
        return Arrays.stream(values())
                .filter(act -> act.hasForm() && act.path.equals(path))
                .findFirst();
    }

    /** The last part of the address of its form. */
    public String path() {
        return path;
    }

    /** Whether people do it to an item by itself. */
    boolean hasForm() {
        return !path.isEmpty();
    }

    boolean startsFrom(Condition condition) {
        return from.contains(condition);
    }

    Condition endsIn(Condition before) {
        return to == null ? before : to;
    }

    /** Whether the item goes somewhere. */
    public boolean moves() {
        return this == MOVED || this == FOUND;
    }

    public boolean needsReason() {
        return this == QUARANTINED || this == RELEASED || this == LOST || this == RETIRED;
    }

    /** Whether the item leaves the production and can't be taken back into use. */
    public boolean isForGood() {
        return this == RETIRED || this == RETURNED;
    }

    /** The word for the record: item.moved. */
    String action() {
        return "item." + name().toLowerCase(Locale.ROOT);
    }
}

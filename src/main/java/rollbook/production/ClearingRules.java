package rollbook.production;

import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * All that decides what clears a medium, read together: the clearing policies and the legs of the copy plan.
 *
 * @param asOf when they were read; how old a check is counts from then
 */
public record ClearingRules(Map<MediaKind, ClearingPolicy> policies, List<Leg> legs, Instant asOf) {

    /** What clears a medium of a kind. */
    public ClearingPolicy policy(MediaKind subject) {
        ClearingPolicy policy = policies.get(subject);
        if (policy == null) {
            throw new IllegalArgumentException("nothing is ever cleared from " + subject);
        }
        return policy;
    }

    /**
     * The legs whose copies must be proven. A card waits for all that are needed to clear; a medium that comes back into
     * use itself waits for those that are kept.
     */
    public List<Leg> neededLegs(MediaKind subject) {
        return legs.stream()
                .filter(Leg::neededToClear)
                .filter(leg -> subject == MediaKind.CARD || leg.returnsAfterDays() == null)
                .toList();
    }

    /** The same rules without the legs whose media come back into use. */
    public ClearingRules withKeptLegs() {
        return new ClearingRules(
                policies,
                legs.stream().filter(leg -> leg.returnsAfterDays() == null).toList(),
                asOf);
    }

    /** The same rules with another policy for its kind of medium: what would be if it held. */
    public ClearingRules with(ClearingPolicy draft) {
        Map<MediaKind, ClearingPolicy> changed = new EnumMap<>(policies);
        changed.put(draft.subject(), draft);
        return new ClearingRules(changed, legs, asOf);
    }
}

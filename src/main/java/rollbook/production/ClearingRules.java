package rollbook.production;

import java.util.List;

/** All that decides what clears a card, read together: the clearing policy and the legs of the copy plan. */
public record ClearingRules(ClearingPolicy policy, List<Leg> legs) {}

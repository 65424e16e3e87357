package rollbook.production;

import java.util.UUID;

/** A person no longer belongs to a production; published within the transaction that took them off. */
public record MemberRemoved(UUID productionId, UUID personId) {}

package rollbook.production;

import java.util.UUID;

/**
 * Where media are kept.
 *
 * @param offSite away from the set and the production office, so that one accident can't reach both
 * @param threat the disaster that threatens the place, in a word such as flood; empty if nobody said, and then it may be
 *     any
 * @param version for noticing that somebody else changed the place meanwhile
 */
public record Place(UUID id, String name, boolean offSite, String threat, int version) {}

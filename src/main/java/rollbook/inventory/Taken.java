package rollbook.inventory;

import java.util.Set;

/**
 * What no further item can have, in capitals.
 *
 * @param serials of items that are neither retired nor returned
 */
record Taken(Set<String> codes, Set<String> serials) {}

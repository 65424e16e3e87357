package rollbook.cost;

import java.time.Instant;

/**
 * What a production may spend on media, as somebody said at some time.
 *
 * @param number counted from one
 * @param reason why it is so much, or who agreed to it
 */
record Budget(int number, long minorUnits, String reason, Instant at, String byName) {}

package rollbook.turnaround;

/**
 * How a station’s day went.
 *
 * @param offloads started, repeated ones too
 * @param queuedMillis of all cards together, waiting for a reader
 * @param stayMillis of all cards together, from arriving until proven
 * @param greatestQueue most cards that waited for a reader at one time
 */
public record StationDay(String name, int offloads, long queuedMillis, long stayMillis, int greatestQueue) {}

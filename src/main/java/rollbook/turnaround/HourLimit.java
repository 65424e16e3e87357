package rollbook.turnaround;

/**
 * What held offloads back in an hour: with a faster or a further one of these they would have been further.
 *
 * @param hourFromMillis a whole hour since midnight
 * @param heldMillis of all offloads together; each is held back by one part at a time
 */
public record HourLimit(long hourFromMillis, Part part, long heldMillis) {}

package rollbook.turnaround;

/**
 * How a camera’s day went.
 *
 * @param waitingMillis a take was due and no blank card was there; changing cards isn’t waiting
 * @param cardsPulled with anything on them
 */
public record CameraDay(String name, long recordedMillis, long recordedBytes, long waitingMillis, int cardsPulled) {}

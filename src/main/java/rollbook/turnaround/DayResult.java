package rollbook.turnaround;

import java.util.List;

/**
 * A day that was played.
 *
 * @param cameras in the plan’s order
 * @param stations in the plan’s order
 * @param parts in the plan’s order
 * @param hours by hour, then in the order of the parts
 * @param startMillis first call
 * @param wrapMillis last wrap
 * @param lastProvenMillis the wrap if nothing was recorded
 * @param endMillis all that can come to rest has come to rest
 * @param unprovenCards which no reader was left for
 * @param activities by lane, in the order of time; empty if only the summary was asked for
 */
public record DayResult(
        List<CameraDay> cameras,
        List<StationDay> stations,
        List<PartUse> parts,
        List<HourLimit> hours,
        long startMillis,
        long wrapMillis,
        long lastProvenMillis,
        long endMillis,
        int unprovenCards,
        List<Activity> activities) {
    public DayResult {
        cameras = List.copyOf(cameras);
        stations = List.copyOf(stations);
        parts = List.copyOf(parts);
        hours = List.copyOf(hours);
        activities = List.copyOf(activities);
    }

    /** From the last camera’s wrap until the last card is proven; zero if that was earlier. */
    public long overtimeMillis() {
        return Math.max(0, lastProvenMillis - wrapMillis);
    }

    /** Of all cameras together. */
    public long waitingMillis() {
        return cameras.stream().mapToLong(CameraDay::waitingMillis).sum();
    }

    public long recordedBytes() {
        return cameras.stream().mapToLong(CameraDay::recordedBytes).sum();
    }

    public int offloads() {
        return stations.stream().mapToInt(StationDay::offloads).sum();
    }

    public int greatestQueue() {
        return stations.stream().mapToInt(StationDay::greatestQueue).max().orElse(0);
    }
}

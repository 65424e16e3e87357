package rollbook.turnaround;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Which part held offloads back in which hour. */
final class Hours {
    private static final long MILLIS_PER_HOUR = 3_600_000;

    private final List<Part> parts = new ArrayList<>();
    private long[][] heldMillis = new long[48][];

    /** @return the part’s number for {@link #hold} */
    int add(Part part) {
        parts.add(part);
        return parts.size() - 1;
    }

    void hold(int part, long fromMillis, long toMillis) {
        long from = fromMillis;
        while (from < toMillis) {
            int hour = (int) (from / MILLIS_PER_HOUR);
            long to = Math.min(toMillis, (hour + 1) * MILLIS_PER_HOUR);
            if (hour >= heldMillis.length) {
                heldMillis = Arrays.copyOf(heldMillis, 2 * hour);
            }
            if (heldMillis[hour] == null) {
                heldMillis[hour] = new long[parts.size()];
            }
            heldMillis[hour][part] += to - from;
            from = to;
        }
    }

    List<HourLimit> limits() {
        List<HourLimit> limits = new ArrayList<>();
        for (int hour = 0; hour < heldMillis.length; hour++) {
            for (int part = 0; heldMillis[hour] != null && part < parts.size(); part++) {
                if (heldMillis[hour][part] > 0) {
                    limits.add(new HourLimit(hour * MILLIS_PER_HOUR, parts.get(part), heldMillis[hour][part]));
                }
            }
        }
        return limits;
    }
}

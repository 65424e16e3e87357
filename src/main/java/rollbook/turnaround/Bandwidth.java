package rollbook.turnaround;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * What the flows of a station share: host bus, encoder, destinations. A flow that has a share of a part’s time gets bytes
 * through in proportion. Shares are max-min fair (Bertsekas and Gallager, progressive filling): all flows grow alike until
 * a part has no time left; the flows that need it stay there and the others grow on. What grows alike is the time of the
 * part that they share, so a slow read-back doesn’t hold a quick writing to its own bytes per second.
 */
final class Bandwidth {
    private static final double FULL = 1e-12;

    /** Rounding in the last places must not cost a millisecond. */
    private static final double SLACK_MILLIS = 1e-6;

    private static final int OWN_WAY = -1;

    private final int parts;
    private final double[] busyMillis;
    private final double[] left;
    private final double[] load;
    private final int[] users;
    private final int[] heldBy;
    private final Hours hours;
    private final List<Flow> flows = new ArrayList<>();
    private long advancedMillis;
    private boolean changed;

    /** @param heldBy the hours’ numbers of the shared parts */
    Bandwidth(int[] heldBy, Hours hours) {
        this.heldBy = heldBy;
        this.hours = hours;
        parts = heldBy.length;
        busyMillis = new double[parts];
        left = new double[parts];
        load = new double[parts];
        users = new int[parts];
    }

    void start(Flow flow, long now) {
        advance(now);
        flows.add(flow);
        changed = true;
    }

    /** Takes out the flows of an offload that is broken off. */
    List<Flow> stop(Offload offload, long now) {
        advance(now);
        List<Flow> stopped =
                flows.stream().filter(flow -> flow.offload == offload).toList();
        flows.removeAll(stopped);
        changed = true;
        return stopped;
    }

    /** Takes out the flows that are done, in the order in which they began. */
    List<Flow> done(long now) {
        advance(now);
        List<Flow> done = new ArrayList<>(2);
        for (int i = 0; i < flows.size(); i++) {
            Flow flow = flows.get(i);
            if (flow.doneMillis <= now) {
                done.add(flow);
                flows.remove(i--);
            }
        }
        changed = true;
        return done;
    }

    boolean isChanged() {
        return changed;
    }

    /** Shares anew, at the instant of a change. @return when the first flow will be done, or the largest number if there is none */
    long share(long now) {
        changed = false;
        fill();
        long first = Long.MAX_VALUE;
        for (Flow flow : flows) {
            double millis = Math.ceil(flow.leftBytes / flow.bytesPerMilli - SLACK_MILLIS);
            flow.doneMillis = now + Math.max(0, (long) millis);
            first = Math.min(first, flow.doneMillis);
        }
        return first;
    }

    /** Full load counts whole, half load half. */
    long busyMillis(int part) {
        return Math.round(busyMillis[part]);
    }

    private void advance(long now) {
        long millis = now - advancedMillis;
        if (millis > 0) {
            for (Flow flow : flows) {
                double bytes = flow.bytesPerMilli * millis;
                flow.leftBytes -= bytes;
                for (int part : flow.parts) {
                    busyMillis[part] += bytes * flow.weights[part];
                }
                hours.hold(flow.limit == OWN_WAY ? flow.ownWay : heldBy[flow.limit], advancedMillis, now);
            }
        }
        advancedMillis = now;
    }

    private void fill() {
        Arrays.fill(left, 1);
        count();
        for (Flow flow : flows) {
            flow.settled = false;
            flow.bytesPerMilliOfLevel = ownSpeed(flow);
        }
        double level = 0;
        int open = flows.size();
        while (open > 0) {
            weigh();
            double step = step(level);
            level += step;
            for (int part = 0; part < parts; part++) {
                left[part] -= step * load[part];
            }
            open -= settle(level);
        }
    }

    private void count() {
        Arrays.fill(users, 0);
        for (Flow flow : flows) {
            for (int part : flow.parts) {
                users[part]++;
            }
        }
    }

    /** With all the time of the parts that others use as well. Of all parts, if it uses its parts alone. */
    private double ownSpeed(Flow flow) {
        double shared = 0;
        double any = 0;
        for (int part : flow.parts) {
            any = Math.max(any, flow.weights[part]);
            if (users[part] > 1) {
                shared = Math.max(shared, flow.weights[part]);
            }
        }
        return 1 / (shared > 0 ? shared : any);
    }

    private void weigh() {
        Arrays.fill(load, 0);
        for (Flow flow : flows) {
            if (!flow.settled) {
                for (int part : flow.parts) {
                    load[part] += flow.weights[part] * flow.bytesPerMilliOfLevel;
                }
            }
        }
    }

    /** How much further all open flows can grow. */
    private double step(double level) {
        double step = Double.POSITIVE_INFINITY;
        for (Flow flow : flows) {
            if (!flow.settled) {
                step = Math.min(step, flow.ceiling / flow.bytesPerMilliOfLevel - level);
            }
        }
        for (int part = 0; part < parts; part++) {
            if (load[part] > 0) {
                step = Math.min(step, left[part] / load[part]);
            }
        }
        return Math.max(0, step);
    }

    private int settle(double level) {
        int settled = 0;
        for (Flow flow : flows) {
            double bytesPerMilli = level * flow.bytesPerMilliOfLevel;
            int limit = flow.settled ? parts : limit(flow, bytesPerMilli);
            if (limit != parts) {
                flow.limit = limit;
                flow.bytesPerMilli = bytesPerMilli;
                flow.settled = true;
                settled++;
            }
        }
        return settled;
    }

    /** What keeps a flow from growing further; the number of parts if nothing does. */
    private int limit(Flow flow, double bytesPerMilli) {
        if (flow.ceiling <= bytesPerMilli * (1 + FULL)) {
            return OWN_WAY;
        }
        for (int part : flow.parts) {
            if (left[part] <= FULL) {
                return part;
            }
        }
        return parts;
    }
}

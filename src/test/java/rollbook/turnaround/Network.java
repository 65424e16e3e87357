package rollbook.turnaround;

import java.util.List;

/**
 * Mean value analysis: customers go round between a delay and stations, exactly (Reiser and Lavenberg) or approximately (Schweitzer).
 *
 * @param delay mean time of a round that is spent where nobody waits
 */
record Network(double delay, List<Stop> stops) {

    /**
     * @param visits to it in a round
     * @param service mean time of a visit without waiting
     * @param servers {@link #DELAY} for one where nobody waits
     */
    record Stop(double visits, double service, int servers) {}

    static final int DELAY = Integer.MAX_VALUE;

    /** Of one visit, each in the order of the stops. */
    record Means(double throughput, double[] residence, double[] customers) {}

    Means exact(int customers) {
        int count = stops.size();
        double[] residence = new double[count];
        double[] at = new double[count];
        double[][] few = new double[count][];
        for (int k = 0; k < count; k++) {
            Stop stop = stops.get(k);
            few[k] = new double[stop.servers() == DELAY ? 0 : stop.servers()];
            if (few[k].length > 0) {
                few[k][0] = 1;
            }
        }
        double throughput = 0;
        for (int n = 1; n <= customers; n++) {
            for (int k = 0; k < count; k++) {
                residence[k] = residence(stops.get(k), at[k], few[k]);
            }
            throughput = n / (delay + round(residence));
            for (int k = 0; k < count; k++) {
                at[k] = throughput * stops.get(k).visits() * residence[k];
                step(stops.get(k), throughput, few[k]);
            }
        }
        return new Means(throughput, residence, at);
    }

    /** An arriving customer is taken to find what is there on average, less a share of its own. Single servers only. */
    Means approximate(int customers) {
        int count = stops.size();
        double[] residence = new double[count];
        double[] at = new double[count];
        double throughput = 0;
        for (int times = 0; times < 10_000; times++) {
            for (int k = 0; k < count; k++) {
                residence[k] = stops.get(k).service() * (1 + at[k] * (customers - 1) / customers);
            }
            throughput = customers / (delay + round(residence));
            for (int k = 0; k < count; k++) {
                at[k] = throughput * stops.get(k).visits() * residence[k];
            }
        }
        return new Means(throughput, residence, at);
    }

    private static double residence(Stop stop, double found, double[] few) {
        if (stop.servers() == DELAY) {
            return stop.service();
        }
        double idle = 0;
        for (int j = 0; j < stop.servers() - 1; j++) {
            idle += (stop.servers() - 1 - j) * few[j];
        }
        return stop.service() / stop.servers() * (1 + found + idle);
    }

    private double round(double[] residence) {
        double sum = 0;
        for (int k = 0; k < residence.length; k++) {
            sum += stops.get(k).visits() * residence[k];
        }
        return sum;
    }

    /** Chances of 0, 1 … servers − 1 customers there, with one customer more in all. */
    private static void step(Stop stop, double throughput, double[] few) {
        if (few.length == 0) {
            return;
        }
        double load = stop.visits() * throughput * stop.service();
        double idle = 0;
        for (int j = few.length - 1; j >= 1; j--) {
            few[j] = load / j * few[j - 1];
            idle += (few.length - j) * few[j];
        }
        few[0] = 1 - (load + idle) / few.length;
    }
}

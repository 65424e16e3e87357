package rollbook.turnaround;

/**
 * Arrivals at random (Poisson) at alike servers with one queue, in closed form.
 *
 * @param arrivals in a unit of time
 * @param services that one server does in a unit of time
 */
record OpenQueue(double arrivals, double services, int servers) {

    double load() {
        return arrivals / services / servers;
    }

    /** Erlang’s C, by way of his B and its recursion over the number of servers. */
    double chanceToWait() {
        double offered = arrivals / services;
        double lost = 1;
        for (int n = 1; n <= servers; n++) {
            lost = offered * lost / (n + offered * lost);
        }
        return servers * lost / (servers - offered * (1 - lost));
    }

    /** Mean number in the queue when service times are exponential. */
    double waiting() {
        return chanceToWait() * load() / (1 - load());
    }

    double chanceOfNobody() {
        double offered = arrivals / services;
        double term = 1;
        double sum = 0;
        for (int n = 0; n < servers; n++) {
            sum += term;
            term *= offered / (n + 1);
        }
        return 1 / (sum + term / (1 - load()));
    }

    /**
     * Mean number in the queue of one server whose service times have this standard deviation, however they are
     * distributed (Pollaczek and Khinchine); 0 for fixed times.
     */
    double waitingWithDeviation(double deviation) {
        return (arrivals * arrivals * deviation * deviation + load() * load()) / (2 * (1 - load()));
    }

    /** The number there as a chain, cut off where it no longer matters. */
    BirthDeath chain(int most) {
        return new BirthDeath(most, n -> arrivals, n -> Math.min(n, servers) * services);
    }
}

package rollbook.ordering;

/**
 * The chance with which a pool is to last to the end of the show. It is that of not running out at all, not the share of
 * bytes that find room: on a set the first byte without room stops the offload.
 *
 * @param chance from 0.5 on and below 1
 */
public record ServiceLevel(double chance) {
    /** Common practice, no source. */
    public static final ServiceLevel USUAL = new ServiceLevel(0.95);

    public ServiceLevel {
        if (!(chance >= 0.5 && chance < 1)) {
            throw new IllegalArgumentException("A service level of " + chance);
        }
    }

    /** The chance of running out that is put up with, over the whole rest of the show. */
    public double allowedRisk() {
        return 1 - chance;
    }
}

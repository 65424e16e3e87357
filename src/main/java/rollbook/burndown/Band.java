package rollbook.burndown;

/** Where a figure lies: below {@code p10} with a chance of 10 %, below {@code p50} as likely as above it, and so on. */
public record Band(long p10, long p25, long p50, long p75, long p90) {
    public static final Band NONE = certain(0);

    public static Band certain(long value) {
        return new Band(value, value, value, value, value);
    }

    public Band plus(long value) {
        return new Band(p10 + value, p25 + value, p50 + value, p75 + value, p90 + value);
    }
}

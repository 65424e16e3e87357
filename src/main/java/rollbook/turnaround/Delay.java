package rollbook.turnaround;

/** A time that something takes: its mean and how it varies. */
public record Delay(long meanMillis, Spread spread) {
    public static final Delay NONE = fixed(0);

    public Delay {
        Invalid.unless(meanMillis >= 0, "meanMillis", "must not be negative");
    }

    public static Delay fixed(long millis) {
        return new Delay(millis, Spread.NONE);
    }

    public static Delay exponential(long meanMillis) {
        return new Delay(meanMillis, Spread.EXPONENTIAL);
    }

    /** To the nearest millisecond. */
    long millis(Draws.Stream numbers) {
        return Math.round(numbers.factor(spread) * meanMillis);
    }
}

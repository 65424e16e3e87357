package rollbook.turnaround;

/** A time without takes, such as lunch. */
public record Break(long fromMillis, long toMillis) {
    public Break {
        Invalid.unless(fromMillis < toMillis, "fromMillis", "must be before toMillis");
    }
}

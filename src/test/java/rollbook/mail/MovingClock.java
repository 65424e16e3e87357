package rollbook.mail;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;

/** A clock that a test sets on; it begins now, because rows that others write tell the real time. */
final class MovingClock extends Clock {
    /** As fine as the database keeps it. */
    private Instant now = Instant.now().truncatedTo(ChronoUnit.MICROS);

    void goOn(Duration time) {
        now = now.plus(time);
    }

    void set(Instant instant) {
        now = instant;
    }

    @Override
    public Instant instant() {
        return now;
    }

    @Override
    public ZoneId getZone() {
        return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
        throw new UnsupportedOperationException();
    }
}

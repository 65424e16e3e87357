package rollbook.demo;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.Primary;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;

/**
 * The system's clock, except in the thread that plays the demo: there it tells the time of the story, so that what
 * happened days ago is on record with the time at which it happened.
 */
@Component
@Primary
@Profile("demo")
class DemoClock extends Clock {
    private final ThreadLocal<Instant> storyTime = new ThreadLocal<>();

    /** From now on it is this instant in the calling thread. */
    void tell(Instant instant) {
        storyTime.set(instant);
    }

    /** In the calling thread it is now what it is everywhere. */
    void endStory() {
        storyTime.remove();
    }

    @Override
    public Instant instant() {
        @Nullable Instant told = storyTime.get();
        return told == null ? Instant.now() : told;
    }

    @Override
    public ZoneId getZone() {
        return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
        return new Zoned(zone);
    }

    private final class Zoned extends Clock {
        private final ZoneId zone;

        Zoned(ZoneId zone) {
            this.zone = zone;
        }

        @Override
        public Instant instant() {
            return DemoClock.this.instant();
        }

        @Override
        public ZoneId getZone() {
            return zone;
        }

        @Override
        public Clock withZone(ZoneId other) {
            return new Zoned(other);
        }
    }
}

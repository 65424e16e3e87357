package rollbook.mail;

import java.time.Duration;

/** What a message is for. */
enum Kind {
    /** Asks whether an address is its owner's. */
    CONFIRMATION(Duration.ofDays(1)),
    /** How things stand after a day was wrapped. */
    DIGEST(Duration.ofDays(2)),
    /** Something is wrong. */
    ALARM(Duration.ofDays(7)),
    /** What the week brings. */
    WEEKLY(Duration.ofDays(4));

    /** How long after it was written it is still worth sending. */
    final Duration useful;

    Kind(Duration useful) {
        this.useful = useful;
    }
}

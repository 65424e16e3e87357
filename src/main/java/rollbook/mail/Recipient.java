package rollbook.mail;

import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;

/**
 * Where a person's mail goes and when it may.
 *
 * @param address the confirmed one; null while there is none
 * @param wantedAddress the one that waits to be confirmed; null if none does
 * @param codeUntil how long the newest link that confirms it works; null if none was sent yet
 * @param portal the portal's address as the person opens it, without a slash at its end
 * @param quietFrom null without quiet hours
 * @param wakes whether alarms come in quiet hours too
 */
record Recipient(
        @Nullable String address,
        @Nullable Instant confirmedAt,
        @Nullable String wantedAddress,
        @Nullable Instant codeUntil,
        String portal,
        ZoneId zone,
        @Nullable LocalTime quietFrom,
        @Nullable LocalTime quietUntil,
        boolean wakes,
        int version) {

    /** When mail of a kind may go out that would go at that instant. */
    Instant notBefore(Kind kind, Instant instant) {
        return quietFrom == null || quietUntil == null || kind == Kind.CONFIRMATION || kind == Kind.ALARM && wakes
                ? instant
                : new QuietHours(quietFrom, quietUntil, zone).notBefore(instant);
    }
}

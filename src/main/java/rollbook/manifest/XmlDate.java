package rollbook.manifest;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import org.jspecify.annotations.Nullable;

/** Reads {@code xs:dateTime}. A date without a zone names no instant. */
final class XmlDate {
    private static final int TO_SECONDS = "2026-03-04T18:05:12".length();

    private XmlDate() {}

    /** Null for a date without a zone; {@link DateTimeException} for what is no date. */
    static @Nullable Instant instant(String text) {
        Instant plain = plain(text);
        if (plain != null) {
            return plain;
        }
        String normal = text.strip();
        boolean midnight = normal.startsWith("T24:00:00", TO_SECONDS - 9);
        if (midnight) { // the end of a day, which Java has no notation for
            normal = normal.substring(0, TO_SECONDS - 8) + "00" + normal.substring(TO_SECONDS - 6);
        }
        try {
            Instant instant = OffsetDateTime.parse(normal).toInstant();
            return midnight ? instant.plusSeconds(86_400) : instant;
        } catch (DateTimeException withoutZone) {
            LocalDateTime.parse(normal);
            return null;
        }
    }

    /** The usual form, {@code 2026-03-04T18:05:12Z} or with hours and minutes for the Z; a million are soon read. */
    private static @Nullable Instant plain(String text) {
        int length = text.length();
        boolean utc = length == TO_SECONDS + 1 && text.charAt(TO_SECONDS) == 'Z';
        boolean offset = length == TO_SECONDS + 6 && text.charAt(TO_SECONDS + 3) == ':';
        if (!utc && !offset
                || text.charAt(4) != '-'
                || text.charAt(7) != '-'
                || text.charAt(10) != 'T'
                || text.charAt(13) != ':'
                || text.charAt(16) != ':') {
            return null;
        }
        int year = number(text, 0, 4);
        int month = number(text, 5, 2);
        int day = number(text, 8, 2);
        int hour = number(text, 11, 2);
        int minute = number(text, 14, 2);
        int second = number(text, 17, 2);
        int zone = offset ? zoneSeconds(text) : 0;
        boolean inRange = year >= 0
                && month >= 1
                && month <= 12
                && day >= 1
                && day <= 28
                && hour >= 0
                && hour < 24
                && minute >= 0
                && minute < 60
                && second >= 0
                && second < 60
                && zone != Integer.MIN_VALUE;
        return inRange
                ? Instant.ofEpochSecond(LocalDate.of(year, month, day).toEpochDay() * 86_400L
                        + hour * 3_600
                        + minute * 60
                        + second
                        - zone)
                : null;
    }

    private static int zoneSeconds(String text) {
        char sign = text.charAt(TO_SECONDS);
        int hours = number(text, TO_SECONDS + 1, 2);
        int minutes = number(text, TO_SECONDS + 4, 2);
        if (sign != '+' && sign != '-' || hours < 0 || hours > 14 || minutes < 0 || minutes > 59) {
            return Integer.MIN_VALUE;
        }
        return (sign == '-' ? -1 : 1) * (hours * 3_600 + minutes * 60);
    }

    /** -1 where a character is no digit. */
    private static int number(String text, int from, int digits) {
        int number = 0;
        for (int i = from; i < from + digits; i++) {
            int digit = text.charAt(i) - '0';
            if (digit < 0 || digit > 9) {
                return -1;
            }
            number = number * 10 + digit;
        }
        return number;
    }
}

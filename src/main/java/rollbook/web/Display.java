package rollbook.web;

import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.text.NumberFormat;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;
import org.thymeleaf.spring6.util.DetailedError;

/**
 * How figures, times and messages are written on pages, in mail and in reports. In templates: {@code @display}.
 * Bytes come as any whole {@link Number}; a missing zone is read as UTC; every method is free of side effects.
 */
@Component("display")
public class Display {
    private static final Locale LOCALE = Locale.UK;
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", LOCALE);
    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("EEEE d MMMM uuuu", LOCALE);
    private static final DateTimeFormatter DAY_AND_MONTH = DateTimeFormatter.ofPattern("d MMM", LOCALE);
    private static final DateTimeFormatter SHORT_DATE = DateTimeFormatter.ofPattern("EEE d MMM uuuu", LOCALE);

    /** Stands in no message. */
    private static final String APART = "\u0000";

    private final MessageSource messages;
    private final Clock clock;

    Display(MessageSource messages, Clock clock) {
        this.messages = messages;
        this.clock = clock;
    }

    /** 4.82 TB (4.38 TiB). */
    public String amount(Number bytes) {
        BigDecimal exact = new BigDecimal(bytes.toString());
        return exact.abs().compareTo(BigDecimal.valueOf(1000)) < 0
                ? Figures.decimal(exact)
                : "%s (%s)".formatted(Figures.decimal(exact), Figures.binary(exact));
    }

    /** 4.82 TB. */
    public String size(Number bytes) {
        return Figures.decimal(new BigDecimal(bytes.toString()));
    }

    /** 4,820,000,000,000 bytes. */
    public String exact(Number bytes) {
        return text("web.display.bytes", String.format(LOCALE, "%,.0f", new BigDecimal(bytes.toString())));
    }

    /** 412 MB/s. */
    public String rate(Number bytesPerSecond) {
        return Figures.decimal(new BigDecimal(bytesPerSecond.toString())) + "/s";
    }

    /** A plain number with three significant figures: 4.12. */
    public String figure(Number value) {
        return Figures.threeFigures(new BigDecimal(value.toString()));
    }

    /** A whole number in groups: 1,204. */
    public String count(Number value) {
        return String.format(LOCALE, "%,d", new BigDecimal(value.toString()).toBigIntegerExact());
    }

    /** A fraction of 1 as a percentage: 83 %, below ten with one decimal: 2.5 %. */
    public String percent(double fraction) {
        double percent = fraction * 100;
        boolean whole = Math.abs(percent) >= 9.95 || percent == 0;
        return String.format(LOCALE, whole ? "%.0f %%" : "%.1f %%", percent);
    }

    /** An amount in the smallest unit of its currency, written with its decimals: €1,230.00. */
    public String money(long minorUnits, Currency currency) {
        return money(BigDecimal.valueOf(minorUnits, Math.max(0, currency.getDefaultFractionDigits())), currency);
    }

    /** €1,230.00. */
    public String money(BigDecimal amount, Currency currency) {
        int digits = Math.max(0, currency.getDefaultFractionDigits());
        NumberFormat format = NumberFormat.getCurrencyInstance(LOCALE);
        format.setCurrency(currency);
        format.setMinimumFractionDigits(digits);
        format.setMaximumFractionDigits(digits);
        return format.format(amount);
    }

    /** The two largest units of a duration: 3 h 12 min, 2 days 4 h, 45 s. */
    public String duration(Duration duration) {
        Duration length = duration.abs();
        if (length.toSeconds() < 60) {
            return text("web.display.seconds", length.toSeconds());
        }
        if (length.toMinutes() < 60) {
            return text("web.display.minutes", length.toMinutes());
        }
        return length.toHours() < 24
                ? pair("web.display.hours", length.toHours(), "web.display.minutes", length.toMinutesPart())
                : pair("web.display.days", length.toDays(), "web.display.hours", length.toHoursPart());
    }

    /**
     * A moment in three pieces, of which the middle one ages: {@code 18:42, }, {@code 12 min ago} and
     * {@code  (Lisbon)}.
     */
    public record When(String before, String ago, String after) {}

    /** 18:42, 12 min ago (Lisbon); with its date if that is not today's there: Tue 14 Jul 2026, 18:42, 3 days ago (Lisbon). */
    public String when(Instant instant, @Nullable ZoneId zone) {
        return whenAs(instant, zone, ago(instant));
    }

    /** The same for pages that stay open: what ages stands apart. */
    public When parts(Instant instant, @Nullable ZoneId zone) {
        String[] around = whenAs(instant, zone, APART).split(APART, 2);
        return new When(around[0], ago(instant), around[1]);
    }

    private String whenAs(Instant instant, @Nullable ZoneId zone, String ago) {
        ZoneId here = orUtc(zone);
        LocalDate day = LocalDate.ofInstant(instant, here);
        String time = clockTime(instant, here);
        String moment = day.equals(LocalDate.now(clock.withZone(here))) ? time : shortDate(day) + ", " + time;
        return text("web.display.when", moment, ago, place(here));
    }

    /** 12 min ago; in 3 days. Only the largest unit. */
    public String ago(Instant instant) {
        Duration distance = Duration.between(instant, clock.instant());
        Duration length = distance.abs();
        if (length.toSeconds() < 60) {
            return text("web.display.now");
        }
        String largest = length.toHours() < 1
                ? text("web.display.minutes", length.toMinutes())
                : length.toDays() < 1
                        ? text("web.display.hours", length.toHours())
                        : text("web.display.days", length.toDays());
        return text(distance.isNegative() ? "web.display.ahead" : "web.display.ago", largest);
    }

    /** 18:42 on the clocks of the zone. */
    public String clockTime(Instant instant, @Nullable ZoneId zone) {
        return TIME.withZone(orUtc(zone)).format(instant);
    }

    /** Tue 14 Jul 2026, 18:42 (Lisbon): for records and paper, where "ago" would age. */
    public String moment(Instant instant, @Nullable ZoneId zone) {
        ZoneId here = orUtc(zone);
        String date = shortDate(LocalDate.ofInstant(instant, here));
        return "%s, %s (%s)".formatted(date, clockTime(instant, here), place(here));
    }

    /** The moment it is asked: what is on paper says of when it is. */
    public String now(@Nullable ZoneId zone) {
        return moment(clock.instant(), zone);
    }

    /** Tuesday 14 July 2026. */
    public String date(LocalDate date) {
        return DATE.format(date);
    }

    /** Tue 14 Jul 2026. */
    public String shortDate(LocalDate date) {
        return SHORT_DATE.format(date);
    }

    /** 14 Jul, below a picture. */
    public String dayAndMonth(LocalDate date) {
        return DAY_AND_MONTH.format(date);
    }

    /** 2026-07-14T18:42:05Z, for {@code datetime} attributes and exports. */
    public String iso(Instant instant) {
        return instant.truncatedTo(ChronoUnit.SECONDS).toString();
    }

    /** The city a zone is named after: Lisbon. */
    public String place(@Nullable ZoneId zone) {
        String id = orUtc(zone).getId();
        return orUtc(zone) instanceof ZoneOffset offset
                ? offset(offset)
                : id.substring(id.lastIndexOf('/') + 1).replace('_', ' ');
    }

    /** What the zone's clocks differ from UTC now: UTC+01:00. */
    public String offset(@Nullable ZoneId zone) {
        ZoneOffset offset = orUtc(zone).getRules().getOffset(clock.instant());
        return offset.equals(ZoneOffset.UTC) ? "UTC" : "UTC" + offset.getId();
    }

    /** The message of {@code key}; throws if there is none, so that a missing text is found by a test. */
    public String text(String key, Object... args) {
        return messages.getMessage(key, args, LOCALE);
    }

    public String text(Notice notice) {
        return text(notice.key(), notice.args().toArray());
    }

    public String text(Refusal refusal) {
        return text(refusal.key(), refusal.args().toArray());
    }

    /** What to do after a refusal, or null if its module does not say. */
    public @Nullable String next(Refusal refusal) {
        return messages.getMessage(refusal.key() + ".next", refusal.args().toArray(), null, LOCALE);
    }

    /** The name under which a verdict is drawn and worded: proven, size-only, unknown for null. */
    public String verdict(@Nullable Object verdict) {
        return verdict == null
                ? "unknown"
                : verdict.toString().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /**
     * The faults of a form in the order of its fields, as its record has them; what is about the form as a whole comes last.
     * Validation finds them in any order, and a person goes down the page.
     *
     * @param form null if something in it could not be read at all, so that there is none
     */
    public List<DetailedError> inOrder(List<DetailedError> faults, @Nullable Object form) {
        List<String> fields = form != null && form.getClass().isRecord()
                ? Arrays.stream(form.getClass().getRecordComponents())
                        .map(RecordComponent::getName)
                        .toList()
                : List.of();
        return faults.stream()
                .sorted(Comparator.comparingInt(fault -> {
                    int place = fields.indexOf(fault.getFieldName().replaceAll("[.\\[].*", ""));
                    return place < 0 ? fields.size() : place;
                }))
                .toList();
    }

    /** A line of the error summary: the message, led by its field's label if a text {@code labels.field} is there. */
    public String problem(@Nullable String labels, String field, String message) {
        String label = labels == null
                ? null
                : messages.getMessage(labels + "." + field.replaceAll("\\[\\d+]", ""), null, null, LOCALE);
        return label == null ? message : text("web.error.line", label, message);
    }

    /** The ids of what describes a field, for {@code aria-describedby}; null if nothing does. */
    public @Nullable String describedBy(String field, @Nullable String hint, boolean wrong) {
        String ids = Stream.of(hint == null ? null : field + "-hint", wrong ? field + "-error" : null)
                .filter(Objects::nonNull)
                .collect(Collectors.joining(" "));
        return ids.isEmpty() ? null : ids;
    }

    private String pair(String largeKey, long large, String smallKey, long small) {
        return small == 0 ? text(largeKey, large) : text(largeKey, large) + " " + text(smallKey, small);
    }

    private static ZoneId orUtc(@Nullable ZoneId zone) {
        return zone == null ? ZoneOffset.UTC : zone;
    }
}

package rollbook.calendar;

import biweekly.ICalDataType;
import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import biweekly.io.text.ICalWriter;
import biweekly.util.DateTimeComponents;
import biweekly.util.Duration;
import biweekly.util.ICalDate;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.Date;
import java.util.List;

/** Writes entries as a calendar (RFC 5545), each as an all-day event. Equal entries make equal texts, to the byte. */
final class CalendarText {
    private static final String PRODUCT = "-//Rollbook//Calendar//EN";
    private static final int HOURS_BETWEEN_FETCHES = 1;
    /** RFC 5545, 3.1: without the line break. */
    private static final int LONGEST_LINE_OCTETS = 75;

    private CalendarText() {}

    /**
     * @param name what the calendar is called
     * @param base the portal's address, without a slash at its end
     */
    static String of(String name, String base, List<Entry> entries) {
        ICalendar calendar = new ICalendar();
        calendar.setProductId(PRODUCT);
        calendar.setName(name);
        calendar.setRefreshInterval(
                        Duration.builder().hours(HOURS_BETWEEN_FETCHES).build())
                .setParameter("VALUE", ICalDataType.DURATION.getName());
        entries.forEach(entry -> calendar.addEvent(event(base, entry)));
        StringWriter text = new StringWriter();
        try (ICalWriter writer = new ICalWriter(text, ICalVersion.V2_0)) {
            // It would count characters; the standard counts octets.
            writer.getVObjectWriter().getFoldedLineWriter().setLineLength(null);
            writer.write(calendar);
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return folded(text.toString());
    }

    private static VEvent event(String base, Entry entry) {
        VEvent event = new VEvent();
        event.setUid(entry.uid());
        event.setDateTimeStamp(Date.from(entry.changedAt()));
        event.setSequence(entry.sequence());
        event.setDateStart(date(entry.date()));
        event.setSummary(entry.summary());
        event.setDescription(entry.description());
        event.setUrl(base + entry.path());
        // Nobody is busy all day because a drive arrives.
        event.setTransparency(true);
        return event;
    }

    private static ICalDate date(LocalDate date) {
        return new ICalDate(new DateTimeComponents(date.getYear(), date.getMonthValue(), date.getDayOfMonth()), false);
    }

    private static String folded(String text) {
        StringBuilder folded = new StringBuilder(text.length());
        int octets = 0;
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            int character = text.codePointAt(i);
            boolean ends = character == '\r' || character == '\n';
            int more = octets(character);
            if (!ends && octets + more > LONGEST_LINE_OCTETS) {
                folded.append("\r\n ");
                octets = 1;
            }
            folded.appendCodePoint(character);
            octets = ends ? 0 : octets + more;
        }
        return folded.toString();
    }

    /** In UTF-8. */
    private static int octets(int character) {
        return character < 0x80 ? 1 : character < 0x800 ? 2 : character < 0x10000 ? 3 : 4;
    }
}

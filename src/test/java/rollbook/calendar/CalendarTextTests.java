package rollbook.calendar;

import static org.assertj.core.api.Assertions.assertThat;

import biweekly.ICalendar;
import biweekly.component.VEvent;
import biweekly.io.text.ICalReader;
import biweekly.util.ICalDate;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The written text against RFC 5545 and RFC 7986, and read back by a library. */
class CalendarTextTests {
    private static final Entry ARRIVAL = new Entry(
            "arrival-1@rollbook",
            LocalDate.of(2031, 3, 3),
            "5 items for SHUTTLE expected",
            "One; two, three\nfour \\ five",
            "/p/SHOW-1/storage/orders/1",
            Instant.parse("2031-02-28T23:30:05Z"),
            2);

    /** Worked by hand from RFC 5545: 3.3.4 dates, 3.3.11 escapes, 3.6.1 events; RFC 7986: 5.1, 5.7. */
    @Test
    void anEntryIsAnAllDayEventThatKeepsNobodyBusy() {
        assertThat(CalendarText.of("Show; one, two", "https://rollbook.example.org", List.of(ARRIVAL))
                        .split("\r\n"))
                .containsExactly(
                        "BEGIN:VCALENDAR",
                        "VERSION:2.0",
                        "PRODID:-//Rollbook//Calendar//EN",
                        "NAME:Show\\; one\\, two",
                        "REFRESH-INTERVAL;VALUE=DURATION:PT1H",
                        "BEGIN:VEVENT",
                        "UID:arrival-1@rollbook",
                        "DTSTAMP:20310228T233005Z",
                        "SEQUENCE:2",
                        "DTSTART;VALUE=DATE:20310303",
                        "SUMMARY:5 items for SHUTTLE expected",
                        "DESCRIPTION:One\\; two\\, three\\nfour \\\\ five",
                        "URL:https://rollbook.example.org/p/SHOW-1/storage/orders/1",
                        "TRANSP:TRANSPARENT",
                        "END:VEVENT",
                        "END:VCALENDAR");
    }

    @Test
    void aCalendarOfNothingIsStillACalendar() throws IOException {
        assertThat(read(CalendarText.of("Show", "http://localhost", List.of())).getEvents())
                .isEmpty();
    }

    /** RFC 5545, 3.1: at most 75 octets without the break, and no character is cut in two. */
    @Test
    void whateverStandsInItComesBackFromLinesOfAtMost75Octets() throws IOException {
        long seed = 20261126;
        Random chance = new Random(seed);
        for (int round = 0; round < 200; round++) {
            List<Entry> entries = new ArrayList<>();
            for (int i = chance.nextInt(5); i >= 0; i--) {
                entries.add(new Entry(
                        "thing-" + i + "@rollbook",
                        LocalDate.of(2031, 1, 1).plusDays(chance.nextInt(400)),
                        words(chance),
                        words(chance),
                        "/p/SHOW-1/storage",
                        Instant.EPOCH.plus(chance.nextInt(), ChronoUnit.SECONDS),
                        chance.nextInt(9)));
            }
            String text = CalendarText.of("Show", "http://localhost", entries);

            assertThat(Arrays.stream(text.split("\r\n")).mapToInt(line -> line.getBytes(StandardCharsets.UTF_8).length))
                    .as("seed %d, round %d", seed, round)
                    .allMatch(octets -> octets <= 75);
            assertThat(read(text).getEvents())
                    .as("seed %d, round %d", seed, round)
                    .extracting(CalendarTextTests::entry)
                    .isEqualTo(entries);
        }
    }

    private static String words(Random chance) {
        String letters = "ab ,;:\\\n\"’éß語😀n";
        StringBuilder words = new StringBuilder("x");
        for (int i = chance.nextInt(120); i > 0; i--) {
            words.appendCodePoint(letters.codePoints()
                    .skip(chance.nextInt((int) letters.codePoints().count()))
                    .findFirst()
                    .orElseThrow());
        }
        return words.append('x').toString();
    }

    private static Entry entry(VEvent event) {
        ICalDate date = event.getDateStart().getValue();
        assertThat(date.hasTime()).isFalse();
        return new Entry(
                event.getUid().getValue(),
                LocalDate.of(
                        date.getRawComponents().getYear(),
                        date.getRawComponents().getMonth(),
                        date.getRawComponents().getDate()),
                event.getSummary().getValue(),
                event.getDescription().getValue(),
                event.getUrl().getValue().substring("http://localhost".length()),
                event.getDateTimeStamp().getValue().toInstant(),
                event.getSequence().getValue());
    }

    static ICalendar read(String text) throws IOException {
        try (ICalReader reader = new ICalReader(text)) {
            return reader.readNext();
        }
    }
}

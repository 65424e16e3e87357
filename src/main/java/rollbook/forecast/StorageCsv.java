package rollbook.forecast;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** The table of all legs, in exact bytes. */
final class StorageCsv {
    private static final CSVFormat FORMAT = CSVFormat.RFC4180
            .builder()
            .setHeader(
                    "leg",
                    "date",
                    "shooting_days",
                    "planned_bytes",
                    "recorded_bytes",
                    "expected_bytes",
                    "leaving_bytes",
                    "returned_bytes",
                    "arrived_bytes",
                    "left_bytes")
            .get();

    private StorageCsv() {}

    static String of(StorageForecast forecast, Map<UUID, Map<LocalDate, Long>> roomOnPastDates) {
        StringWriter text = new StringWriter();
        try (CSVPrinter csv = new CSVPrinter(text, FORMAT)) {
            for (LegForecast leg : forecast.legs()) {
                BurnDown series = leg.burnDown().withPast(roomOnPastDates.getOrDefault(leg.legId(), Map.of()));
                for (BurnDown.Point point : series.points()) {
                    csv.printRecord(
                            words(leg.legName()),
                            point.date(),
                            words(point.days().stream()
                                    .map(day -> day.unit() + " " + day.number())
                                    .collect(Collectors.joining(", "))),
                            point.plannedBytes(),
                            point.actualBytes(),
                            point.expectedBytes(),
                            point.leavingBytes(),
                            point.returnedBytes(),
                            point.arrivedBytes(),
                            point.leftBytes());
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    /** A spreadsheet takes what begins like this for a formula; a name stays a name behind an apostrophe. */
    private static String words(String text) {
        return !text.isEmpty() && "=+-@\t\r".indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
    }
}

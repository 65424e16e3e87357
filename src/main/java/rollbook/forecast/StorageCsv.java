package rollbook.forecast;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import rollbook.burndown.Band;
import rollbook.burndown.PoolOutlook;
import rollbook.web.SafeCell;

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
                    "left_bytes",
                    "left_p10_bytes",
                    "left_p25_bytes",
                    "left_p75_bytes",
                    "left_p90_bytes",
                    "chance_of_having_run_out")
            .get();

    private StorageCsv() {}

    /** Where a figure has a distribution, the plain column is its median. */
    static String of(StorageForecast forecast, Map<UUID, BurnDown> burnDowns) {
        StringWriter text = new StringWriter();
        try (CSVPrinter csv = new CSVPrinter(text, FORMAT)) {
            for (LegForecast leg : forecast.legs()) {
                for (BurnDown.Point point : burnDowns.get(leg.legId()).points()) {
                    print(csv, leg, point);
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    private static void print(CSVPrinter csv, LegForecast leg, BurnDown.Point point) throws IOException {
        List<Object> row = new ArrayList<>(Arrays.asList(
                SafeCell.write(leg.legName()),
                point.date(),
                SafeCell.write(point.days().stream()
                        .map(day -> day.unit() + " " + day.number())
                        .collect(Collectors.joining(", "))),
                point.plannedBytes(),
                point.actualBytes()));
        PoolOutlook.Point outlook = point.outlook();
        if (outlook == null) {
            row.addAll(Arrays.asList(0, 0, 0, 0, point.pastLeftBytes(), null, null, null, null, null));
        } else {
            Band left = outlook.leftBytes();
            row.addAll(List.of(
                    outlook.demandBytes().p50(),
                    outlook.leavingBytes(),
                    outlook.returningBytes().p50(),
                    arrivingBytes(leg, point.date()),
                    left.p50(),
                    left.p10(),
                    left.p25(),
                    left.p75(),
                    left.p90(),
                    outlook.chanceOfHavingRunOut()));
        }
        csv.printRecord(row);
    }

    /** On the date by which it is as likely there as not. */
    private static long arrivingBytes(LegForecast leg, LocalDate date) {
        return leg.outlook().arrivals().stream()
                .filter(arrival -> arrival.usualDate().equals(date))
                .mapToLong(PoolOutlook.ExpectedArrival::bytes)
                .reduce(0, Math::addExact);
    }
}

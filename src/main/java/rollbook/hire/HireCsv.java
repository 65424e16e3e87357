package rollbook.hire;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.jspecify.annotations.Nullable;
import rollbook.quantity.Money;
import rollbook.web.SafeCell;

/** Every item that is or was hired, a line each; amounts are exact, in the currency that the line names. */
final class HireCsv {
    private static final CSVFormat FORMAT = CSVFormat.RFC4180
            .builder()
            .setHeader(
                    "item",
                    "kind",
                    "model",
                    "agreement",
                    "supplier",
                    "started_on",
                    "due_on",
                    "ended_on",
                    "currency",
                    "per_week",
                    "until_due",
                    "first_week_late",
                    "accrued_on",
                    "accrued")
            .get();

    private HireCsv() {}

    static String of(List<Hired> all, LocalDate today, Currency currency) {
        StringWriter text = new StringWriter();
        Money money = new Money(currency);
        try (CSVPrinter csv = new CSVPrinter(text, FORMAT)) {
            for (Hired hired : all) {
                print(csv, hired, today, money);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    private static void print(CSVPrinter csv, Hired hired, LocalDate today, Money money) throws IOException {
        HireEnd end = hired.end();
        LocalDate due = end == null ? hired.dueOn() : end.dueOn();
        Optional<HireTerms> terms = hired.terms();
        csv.printRecord(
                SafeCell.write(hired.item().code()),
                hired.item().kind().name().toLowerCase(Locale.ROOT),
                SafeCell.write(hired.item().model()),
                hired.agreementCode(),
                SafeCell.write(hired.supplier()),
                end == null ? hired.startedOn() : end.startedOn(),
                due,
                end == null ? null : end.endedOn(),
                money.currency().getCurrencyCode(),
                amount(hired.weekMinorUnits(), money),
                amount(
                        due == null
                                ? null
                                : terms.map(HireCost::untilDue)
                                        .map(HireCost::totalMinorUnits)
                                        .orElse(null),
                        money),
                amount(
                        due == null
                                ? null
                                : terms.map(HireCost::firstLateWeekMinorUnits).orElse(null),
                        money),
                end == null ? today : end.endedOn(),
                amount(
                        end == null
                                ? hired.ifReturnedOn(today)
                                        .map(HireCost::totalMinorUnits)
                                        .orElse(null)
                                : Long.valueOf(end.totalMinorUnits()),
                        money));
    }

    private static @Nullable String amount(@Nullable Long minorUnits, Money money) {
        return minorUnits == null ? null : money.write(minorUnits);
    }
}

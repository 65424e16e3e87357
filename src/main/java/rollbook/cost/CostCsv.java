package rollbook.cost;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import rollbook.quantity.Money;
import rollbook.web.SafeCell;

/** All costs as a table, amounts in the currency with its decimals. */
final class CostCsv {
    private static final CSVFormat FORMAT = CSVFormat.RFC4180
            .builder()
            .setHeader("stage", "kind", "way", "what", "source", "on", "amount", "currency")
            .get();

    private CostCsv() {}

    static String of(CostSheet sheet, Money money) {
        StringWriter text = new StringWriter();
        try (CSVPrinter csv = new CSVPrinter(text, FORMAT)) {
            for (CostLine line : sheet.lines()) {
                csv.printRecord(
                        line.stage(),
                        line.kind(),
                        line.hired() ? "HIRED" : "BOUGHT",
                        SafeCell.write(line.what()),
                        SafeCell.write(line.source()),
                        line.on(),
                        money.write(line.minorUnits()),
                        money.currency().getCurrencyCode());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }
}

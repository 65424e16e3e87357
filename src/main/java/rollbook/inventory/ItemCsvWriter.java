package rollbook.inventory;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.jspecify.annotations.Nullable;
import rollbook.quantity.Money;
import rollbook.web.SafeCell;

/** Writes items as the CSV that {@link ItemCsvReader} reads: UTF-8 with a mark that says so, lines ending as in RFC 4180. */
final class ItemCsvWriter {
    private static final List<Column> COLUMNS = Stream.of(Column.values())
            .filter(column -> column != Column.CAPACITY_TB)
            .toList();

    private final Map<Column, String> headers;
    private final Money money;

    ItemCsvWriter(Map<Column, String> headers, Money money) {
        this.headers = headers;
        this.money = money;
    }

    void write(List<ItemRow> items, Appendable out) throws IOException {
        out.append('\uFEFF');
        var printer = new CSVPrinter(out, CSVFormat.RFC4180);
        printer.printRecord(COLUMNS.stream().map(headers::get));
        for (ItemRow item : items) {
            printer.printRecord(COLUMNS.stream().map(column -> SafeCell.write(cell(item, column))));
        }
    }

    private String cell(ItemRow row, Column column) {
        MediaItem item = row.item();
        return switch (column) {
            case CODE -> item.code();
            case KIND -> ItemCells.word(item.kind());
            case MODEL -> item.model();
            case CAPACITY_GB -> written(item.capacityBytes(), DecimalUnit.GIGABYTES);
            case CAPACITY_TB -> written(item.capacityBytes(), DecimalUnit.TERABYTES);
            case READ -> written(item.readBytesPerSecond(), DecimalUnit.MEGABYTES);
            case WRITE -> written(item.writeBytesPerSecond(), DecimalUnit.MEGABYTES);
            case SERIAL -> item.serial();
            case OWNER -> ItemCells.word(item.ownership());
            case SUPPLIER -> item.supplier();
            case COST -> item.costMinorUnits() == null ? "" : money.write(item.costMinorUnits());
            case HIRED_UNTIL -> Objects.toString(item.hiredUntil(), "");
            case LEG -> Objects.toString(row.legName(), "");
            case PLACE -> item.placeName();
            case HOLDER -> item.holder();
            case STATE -> row.state().plainWord();
        };
    }

    private static String written(@Nullable Long bytes, DecimalUnit unit) {
        return bytes == null ? "" : unit.write(bytes);
    }
}

package rollbook.inventory;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;
import rollbook.production.MediaKind;
import rollbook.web.Display;
import rollbook.web.SafeCell;

/** What the pages of an import show. */
@Component
class ImportPage {
    private static final int MOST_ROWS = 500;

    private final ColumnHeaders headers;
    private final Display display;

    ImportPage(ColumnHeaders headers, Display display) {
        this.headers = headers;
        this.display = display;
    }

    /** A column's name, whether it must be there, and what to write in it. */
    record ColumnHelp(String name, boolean required, String text) {}

    record BadRow(int number, @Nullable String column, String problem, String next) {}

    record GoodRow(int number, NewItem item, String placeName) {}

    void explain(Model model, ItemFormPage.Words words) {
        Map<Column, String> names = headers.all();
        model.addAttribute(
                "columns",
                Arrays.stream(Column.values())
                        .map(column -> new ColumnHelp(
                                Objects.requireNonNull(names.get(column)),
                                Column.REQUIRED.contains(column),
                                help(column, words)))
                        .toList());
        model.addAttribute("mostLines", UploadedText.MOST_LINES);
    }

    private String help(Column column, ItemFormPage.Words words) {
        Object arg = switch (column) {
            case COST -> words.money().currency().getCurrencyCode();
            case PLACE ->
                names(words.places().stream().map(place -> place.name()).toList());
            case LEG -> names(words.legs().stream().map(leg -> leg.name()).toList());
            default -> "";
        };
        return display.text("inventory.column-help." + column, arg);
    }

    private String names(List<String> names) {
        return names.isEmpty() ? display.text("web.none") : String.join(", ", names);
    }

    void show(Model model, String text, ItemCsvReader.Result read, ItemFormPage.Words words) {
        int good = read.good().size();
        long badLines = read.bad().stream()
                .map(ItemCsvReader.BadLine::number)
                .distinct()
                .count();
        model.addAttribute("importForm", new ImportForm(null, text));
        model.addAttribute("usable", read.usable());
        model.addAttribute(
                "sentence",
                read.usable()
                        ? display.text("inventory.preview.sentence.usable", good)
                        : display.text("inventory.preview.sentence.bad", badLines, good));
        model.addAttribute("goodCount", good);
        model.addAttribute("mostRows", MOST_ROWS);
        model.addAttribute("bad", read.bad().stream().map(this::bad).toList());
        model.addAttribute(
                "good",
                read.good().stream()
                        .limit(MOST_ROWS)
                        .map(line -> good(line, words))
                        .toList());
    }

    private BadRow bad(ItemCsvReader.BadLine line) {
        Problem problem = line.problem();
        Object[] args = problem.args().toArray();
        return new BadRow(
                line.number(),
                problem.column() == null ? null : display.text(problem.column().headerKey()),
                display.text(problem.key(), args),
                display.text(problem.key() + ".next", args));
    }

    private static GoodRow good(ItemCsvReader.GoodLine line, ItemFormPage.Words words) {
        String place = words.places().stream()
                .filter(candidate -> candidate.id().equals(line.item().placeId()))
                .findFirst()
                .orElseThrow()
                .name();
        return new GoodRow(line.number(), line.item(), place);
    }

    /** A file that could be imported as it is: invented items at the production's first place. */
    void writeExample(ItemFormPage.Words words, Appendable out) throws IOException {
        out.append('\uFEFF');
        List<Column> columns = List.of(
                Column.CODE,
                Column.KIND,
                Column.MODEL,
                Column.CAPACITY_GB,
                Column.READ,
                Column.WRITE,
                Column.OWNER,
                Column.SUPPLIER,
                Column.COST,
                Column.HIRED_UNTIL,
                Column.PLACE,
                Column.HOLDER);
        String place = SafeCell.write(words.firstPlace());
        boolean whole = words.money().digits() == 0;
        var printer = new CSVPrinter(out, CSVFormat.RFC4180);
        printer.printRecord(columns.stream().map(headers.all()::get));
        printer.printRecord(
                "EXAMPLE-CARD-001",
                word(MediaKind.CARD),
                display.text("inventory.example.card"),
                "960",
                "1500",
                "1200",
                word(Ownership.BOUGHT),
                display.text("inventory.example.supplier"),
                whole ? "650" : "649.5",
                "",
                place,
                "");
        printer.printRecord(
                "EXAMPLE-DRIVE-01",
                word(MediaKind.DRIVE),
                display.text("inventory.example.drive"),
                "4000",
                "900",
                "900",
                word(Ownership.HIRED),
                display.text("inventory.example.supplier"),
                "45",
                "2030-05-31",
                place,
                "");
    }

    private static String word(Enum<?> constant) {
        return ItemCells.word(constant);
    }
}

package rollbook.inventory;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Reads a list of items from CSV text and finds all that is wrong with it; no text makes it fail. Each line is read on
 * its own, so that a quotation mark left open spoils one line and not the rest of the file.
 */
final class ItemCsvReader {
    private static final Pattern LINE_END = Pattern.compile("\r\n|\n|\r");

    private final ItemReading reading;
    private final Map<Column, String> headers;
    private final Set<String> takenCodes;

    /**
     * @param headers what each column is called
     * @param takenCodes codes that exist, in capitals
     */
    ItemCsvReader(ItemReading reading, Map<Column, String> headers, Set<String> takenCodes) {
        this.reading = reading;
        this.headers = headers;
        this.takenCodes = takenCodes;
    }

    record GoodLine(int number, NewItem item) {}

    record BadLine(int number, Problem problem) {}

    record Result(List<GoodLine> good, List<BadLine> bad) {
        boolean usable() {
            return bad.isEmpty() && !good.isEmpty();
        }

        List<NewItem> items() {
            return good.stream().map(GoodLine::item).toList();
        }
    }

    static String[] lines(String text) {
        return LINE_END.split(text.startsWith("\uFEFF") ? text.substring(1) : text);
    }

    Result read(String text) {
        String[] lines = lines(text);
        int first = 0;
        while (first < lines.length && lines[first].isBlank()) {
            first++;
        }
        var result = new Result(new ArrayList<>(), new ArrayList<>());
        CsvHeader header = CsvHeader.of(first < lines.length ? lines[first] : "", headers);
        int headerLine = first < lines.length ? first + 1 : 1;
        header.problems().forEach(problem -> result.bad.add(new BadLine(headerLine, problem)));
        if (header.columns().isEmpty()) {
            return result;
        }
        Map<String, Integer> lineOfCode = new HashMap<>();
        for (int line = first + 1; line < lines.length; line++) {
            if (!lines[line].isBlank()) {
                read(line + 1, lines[line], header, lineOfCode, result);
            }
        }
        if (result.good.isEmpty() && result.bad.isEmpty()) {
            result.bad.add(new BadLine(headerLine, Problem.in(null, "inventory.problem.no-lines")));
        }
        return result;
    }

    private void read(int number, String line, CsvHeader header, Map<String, Integer> lineOfCode, Result result) {
        Optional<List<String>> cells = header.lines().cells(line);
        if (cells.isEmpty()) {
            result.bad.add(new BadLine(number, Problem.in(null, "inventory.problem.quotes")));
            return;
        }
        if (cells.get().size() > header.columns().size()
                && cells.get().stream().skip(header.columns().size()).anyMatch(cell -> !cell.isBlank())) {
            result.bad.add(new BadLine(
                    number,
                    Problem.in(
                            null,
                            "inventory.problem.too-many-cells",
                            cells.get().size(),
                            header.columns().size())));
            return;
        }
        ItemReading.Read read = reading.read(header.named(cells.get()));
        List<Problem> problems = new ArrayList<>(read.problems());
        problems.removeIf(problem -> problem.column() != null && header.lacks(problem.column()));
        problems.addAll(known(read.item(), number, lineOfCode));
        problems.forEach(problem -> result.bad.add(new BadLine(number, problem)));
        if (problems.isEmpty() && read.item() != null) {
            result.good.add(new GoodLine(number, read.item()));
        }
    }

    private List<Problem> known(@Nullable NewItem item, int number, Map<String, Integer> lineOfCode) {
        if (item == null) {
            return List.of();
        }
        Integer earlier = lineOfCode.putIfAbsent(item.code(), number);
        if (takenCodes.contains(item.code())) {
            return List.of(Problem.in(Column.CODE, "inventory.problem.exists", item.code()));
        }
        return earlier == null
                ? List.of()
                : List.of(Problem.in(Column.CODE, "inventory.problem.twice", item.code(), earlier));
    }
}

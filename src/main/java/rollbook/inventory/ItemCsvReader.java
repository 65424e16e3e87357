package rollbook.inventory;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
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
    private final Taken taken;

    /**
     * @param headers what each column is called
     * @param taken what items have that exist
     */
    ItemCsvReader(ItemReading reading, Map<Column, String> headers, Taken taken) {
        this.reading = reading;
        this.headers = headers;
        this.taken = taken;
    }

    record GoodLine(int number, NewItem item) {}

    record BadLine(int number, Problem problem) {}

    /** On which line a code or a serial number stood first. */
    private record Lines(Map<String, Integer> ofCodes, Map<String, Integer> ofSerials) {}

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
        Lines seen = new Lines(new HashMap<>(), new HashMap<>());
        for (int line = first + 1; line < lines.length; line++) {
            if (!lines[line].isBlank()) {
                read(line + 1, lines[line], header, seen, result);
            }
        }
        if (result.good.isEmpty() && result.bad.isEmpty()) {
            result.bad.add(new BadLine(headerLine, Problem.in(null, "inventory.problem.no-lines")));
        }
        return result;
    }

    private void read(int number, String line, CsvHeader header, Lines seen, Result result) {
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
        problems.addAll(known(read.item(), number, seen));
        problems.forEach(problem -> result.bad.add(new BadLine(number, problem)));
        if (problems.isEmpty() && read.item() != null) {
            result.good.add(new GoodLine(number, read.item()));
        }
    }

    private List<Problem> known(@Nullable NewItem item, int number, Lines seen) {
        if (item == null) {
            return List.of();
        }
        List<Problem> problems = new ArrayList<>();
        Integer earlier = seen.ofCodes.putIfAbsent(item.code(), number);
        if (taken.codes().contains(item.code())) {
            problems.add(Problem.in(Column.CODE, "inventory.problem.exists", item.code()));
        } else if (earlier != null) {
            problems.add(Problem.in(Column.CODE, "inventory.problem.twice", item.code(), earlier));
        }
        String serial = item.details().serial();
        if (!serial.isEmpty()) {
            String capitals = serial.toUpperCase(Locale.ROOT);
            Integer alike = seen.ofSerials.putIfAbsent(capitals, number);
            if (taken.serials().contains(capitals)) {
                problems.add(Problem.in(Column.SERIAL, "inventory.problem.serial-exists", serial));
            } else if (alike != null) {
                problems.add(Problem.in(Column.SERIAL, "inventory.problem.serial-twice", serial, alike));
            }
        }
        return problems;
    }
}

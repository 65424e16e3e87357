package rollbook.inventory;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rollbook.web.SafeCell;

/**
 * The first line of a file: which column holds what, and what separates the cells. Names are told by their letters and
 * digits alone, so "Capacity, GB" is "capacity gb".
 *
 * @param columns for each cell what it holds, or null if that is unknown; empty if no cell names a column
 */
record CsvHeader(CsvLines lines, List<@Nullable Column> columns, List<Problem> problems) {
    private static final List<Character> SEPARATORS = List.of(',', ';', '\t');

    /** Read with the separator that makes the most sense of it. */
    static CsvHeader of(String line, Map<Column, String> names) {
        CsvHeader best = of(line, new CsvLines(SEPARATORS.get(0)), names);
        for (char separator : SEPARATORS.subList(1, SEPARATORS.size())) {
            CsvHeader other = of(line, new CsvLines(separator), names);
            if (other.known() > best.known()) {
                best = other;
            }
        }
        return best.known() > 0
                ? best
                : new CsvHeader(
                        best.lines,
                        List.of(),
                        List.of(Problem.in(null, "inventory.problem.no-header", required(names))));
    }

    private static CsvHeader of(String line, CsvLines lines, Map<Column, String> names) {
        Map<String, Column> byName =
                names.keySet().stream().collect(Collectors.toMap(column -> plain(names.get(column)), column -> column));
        List<@Nullable Column> columns = new ArrayList<>();
        List<Problem> problems = new ArrayList<>();
        Set<Column> seen = new HashSet<>();
        for (String cell : lines.cells(line).orElse(List.of())) {
            Column column = byName.get(plain(cell));
            if (column == null && !cell.isBlank()) {
                problems.add(Problem.in(null, "inventory.problem.unknown-column", ItemCells.excerpt(cell), all(names)));
            } else if (column != null && !seen.add(column)) {
                problems.add(Problem.in(column, "inventory.problem.column-twice"));
            }
            columns.add(column);
        }
        Stream.of(Column.values())
                .filter(column -> Column.REQUIRED.contains(column) && !seen.contains(column))
                .forEach(column -> problems.add(Problem.in(column, "inventory.problem.no-column")));
        return new CsvHeader(lines, columns, problems);
    }

    /** Whether a column that every item needs isn't in the file: said once, not again for each line. */
    boolean lacks(Column column) {
        return Column.REQUIRED.contains(column) && !columns.contains(column);
    }

    Map<Column, String> named(List<String> cells) {
        Map<Column, String> named = new EnumMap<>(Column.class);
        for (int i = 0; i < Math.min(cells.size(), columns.size()); i++) {
            Column column = columns.get(i);
            if (column != null) {
                named.putIfAbsent(column, SafeCell.read(cells.get(i)));
            }
        }
        return named;
    }

    private long known() {
        return columns.stream().filter(Objects::nonNull).distinct().count();
    }

    private static String plain(String name) {
        return name.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]", "");
    }

    private static String required(Map<Column, String> names) {
        return Stream.of(Column.values())
                .filter(Column.REQUIRED::contains)
                .map(names::get)
                .collect(Collectors.joining(", "));
    }

    private static String all(Map<Column, String> names) {
        return Stream.of(Column.values()).map(names::get).collect(Collectors.joining(", "));
    }
}

package rollbook.report;

import java.time.Instant;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * One line of a report's CSV file.
 *
 * @param cells without those that are empty
 */
record Fact(FactKind kind, Map<Column, String> cells) {
    /** By kind, then cell by cell; two facts of a report are never equal, so the order is one. */
    static final Comparator<Fact> ORDER =
            Comparator.comparing(Fact::kind).thenComparing(fact -> fact.row().toString());

    Fact {
        cells = Collections.unmodifiableMap(new EnumMap<>(cells));
    }

    private static int compareCells(Fact one, Fact other) {
        for (Column column : Column.values()) {
            int order = one.at(column).compareTo(other.at(column));
            if (order != 0) {
                return order;
            }
        }
        return 0;
    }

    static Builder of(FactKind kind) {
        return new Builder(kind);
    }

    /** The cell's text; empty if there is none. */
    String at(Column column) {
        return cells.getOrDefault(column, "");
    }

    /** What tells it from the other facts of its kind. */
    List<String> key() {
        return kind.key().stream().map(this::at).toList();
    }

    List<String> row() {
        return java.util.Arrays.stream(Column.values()).map(this::at).toList();
    }

    /** Puts a fact together; what is null or empty is left out. */
    static final class Builder {
        private final FactKind kind;
        private final Map<Column, String> cells = new EnumMap<>(Column.class);

        private Builder(FactKind kind) {
            this.kind = kind;
            with(Column.RECORD, kind);
        }

        /** @param value written as by {@code toString}; an enum constant in small letters */
        Builder with(Column column, @Nullable Object value) {
            String text = value instanceof Enum<?> constant
                    ? constant.name().toLowerCase(java.util.Locale.ROOT).replace('_', ' ')
                    : value instanceof Instant instant
                            ? instant.toString()
                            : String.valueOf(value == null ? "" : value);
            if (!text.isEmpty()) {
                cells.put(column, text);
            }
            return this;
        }

        Fact build() {
            return new Fact(kind, cells);
        }
    }
}

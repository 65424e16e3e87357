package rollbook.inventory;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import org.springframework.stereotype.Component;
import rollbook.web.Display;

/** What the columns of a CSV file are called. */
@Component
class ColumnHeaders {
    private final Display display;

    ColumnHeaders(Display display) {
        this.display = display;
    }

    Map<Column, String> all() {
        Map<Column, String> headers = new EnumMap<>(Column.class);
        for (Column column : Column.values()) {
            headers.put(column, display.text(column.headerKey()));
        }
        return Collections.unmodifiableMap(headers);
    }
}

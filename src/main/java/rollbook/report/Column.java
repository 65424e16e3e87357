package rollbook.report;

import java.util.Locale;

/** The columns of a report's CSV file, in their order. Bytes and minutes are plain numbers, instants UTC as ISO 8601. */
enum Column {
    RECORD,
    UNIT,
    DAY,
    DATE,
    ROLL,
    CAMERA,
    CARD,
    ITEM,
    KIND,
    LEG,
    RENDITION,
    PLACE,
    STATE,
    MINUTES,
    BYTES,
    COUNT,
    VERDICT,
    REASONS,
    CHECKED_AT,
    SHA256,
    REFERENCE_SHA256,
    AT,
    BY,
    NOTE;

    String header() {
        return name().toLowerCase(Locale.ROOT);
    }
}

package rollbook.inventory;

import java.util.Set;

/** What can be said about an item on a form or in a column of a CSV file; headers are the messages {@code inventory.column.*}. */
enum Column {
    CODE("code"),
    KIND("kind"),
    MODEL("model"),
    CAPACITY_GB("capacityGb"),
    CAPACITY_TB("capacityTb"),
    READ("readMbPerSecond"),
    WRITE("writeMbPerSecond"),
    SERIAL("serial"),
    OWNER("owner"),
    SUPPLIER("supplier"),
    COST("cost"),
    HIRED_UNTIL("hiredUntil"),
    LEG("leg"),
    PLACE("place"),
    HOLDER("holder"),
    STATE("state");

    /** Without these a file can't be read. */
    static final Set<Column> REQUIRED = Set.of(CODE, KIND, MODEL, PLACE);

    private final String field;

    Column(String field) {
        this.field = field;
    }

    /** The form's field of the same meaning. */
    String field() {
        return field;
    }

    String headerKey() {
        return "inventory.column." + name();
    }
}

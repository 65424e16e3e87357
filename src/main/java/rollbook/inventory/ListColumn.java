package rollbook.inventory;

import rollbook.web.Listing;

/** What the list of items may be sorted by; SQL on i (the item) and p (its place). Only these ever reach the database. */
enum ListColumn {
    CODE("inventory.column.CODE", "upper(i.code)"),
    STATE("inventory.column.STATE", "i.condition, i.card_state"),
    WHERE("inventory.list.where", "lower(p.name), lower(i.holder)"),
    KIND("inventory.column.KIND", "i.kind"),
    MODEL("inventory.column.MODEL", "lower(i.model)"),
    CAPACITY("inventory.list.capacity", "i.capacity_bytes"),
    LEG("inventory.column.LEG", "(select l.position from production_leg l where l.id = i.leg_id)");

    static final Listing.Order<ListColumn> USUAL = new Listing.Order<>(CODE, false);

    private final String key;
    private final String sql;

    ListColumn(String key, String sql) {
        this.key = key;
        this.sql = sql;
    }

    String key() {
        return key;
    }

    /** What isn't known stands last either way, and equal ones by their code. */
    static String orderBy(Listing.Order<ListColumn> order) {
        String direction = order.direction() + " nulls last";
        return " order by " + order.column().sql.replace(", ", direction + ", ") + direction + ", upper(i.code)";
    }
}

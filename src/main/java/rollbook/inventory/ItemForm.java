package rollbook.inventory;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import rollbook.quantity.Money;

/**
 * What somebody types about an item, as typed: one item with its code, or a run with prefix, first number, digits and
 * count. It is understood by {@link ItemReading}, as a line of a file is.
 */
record ItemForm(
        String code,
        String prefix,
        String first,
        String digits,
        String count,
        String kind,
        String model,
        String capacityGb,
        String readMbPerSecond,
        String writeMbPerSecond,
        String serial,
        String owner,
        String supplier,
        String cost,
        String hiredUntil,
        String leg,
        String place,
        String holder,
        String version) {

    /** Fields that a page doesn't have arrive as null. */
    ItemForm {
        code = typed(code);
        prefix = typed(prefix);
        first = typed(first);
        digits = typed(digits);
        count = typed(count);
        kind = typed(kind);
        model = typed(model);
        capacityGb = typed(capacityGb);
        readMbPerSecond = typed(readMbPerSecond);
        writeMbPerSecond = typed(writeMbPerSecond);
        serial = typed(serial);
        owner = typed(owner);
        supplier = typed(supplier);
        cost = typed(cost);
        hiredUntil = typed(hiredUntil);
        leg = typed(leg);
        place = typed(place);
        holder = typed(holder);
        version = typed(version);
    }

    private static String typed(@Nullable String text) {
        return text == null ? "" : text;
    }

    /** A form to begin with: a bought card at the first place, and for a run CARD-001 and on. */
    static ItemForm blank(String firstPlace) {
        return new ItemForm(
                "", "CARD-", "1", "3", "", "CARD", "", "", "", "", "", "BOUGHT", "", "", "", "", firstPlace, "", "");
    }

    static ItemForm of(ItemRow row, Money money) {
        MediaItem item = row.item();
        LocalDate until = item.hiredUntil();
        return new ItemForm(
                item.code(),
                "",
                "",
                "",
                "",
                item.kind().name(),
                item.model(),
                written(item.capacityBytes(), DecimalUnit.GIGABYTES),
                written(item.readBytesPerSecond(), DecimalUnit.MEGABYTES),
                written(item.writeBytesPerSecond(), DecimalUnit.MEGABYTES),
                item.serial(),
                item.ownership().name(),
                item.supplier(),
                item.costMinorUnits() == null ? "" : money.write(item.costMinorUnits()),
                until == null ? "" : until.toString(),
                Objects.toString(row.legName(), ""),
                item.placeName(),
                item.holder(),
                Integer.toString(item.version()));
    }

    private static String written(@Nullable Long bytes, DecimalUnit unit) {
        return bytes == null ? "" : unit.write(bytes);
    }

    Map<Column, String> cells() {
        Map<Column, String> cells = new EnumMap<>(Column.class);
        cells.put(Column.CODE, code);
        cells.put(Column.KIND, kind);
        cells.put(Column.MODEL, model);
        cells.put(Column.CAPACITY_GB, capacityGb);
        cells.put(Column.READ, readMbPerSecond);
        cells.put(Column.WRITE, writeMbPerSecond);
        cells.put(Column.SERIAL, serial);
        cells.put(Column.OWNER, owner);
        cells.put(Column.SUPPLIER, supplier);
        cells.put(Column.COST, cost);
        cells.put(Column.HIRED_UNTIL, hiredUntil);
        cells.put(Column.LEG, leg);
        cells.put(Column.PLACE, place);
        cells.put(Column.HOLDER, holder);
        return cells;
    }

    /** The cells of an item that exists: its kind, place and holder aren't on the form. */
    Map<Column, String> cellsOf(MediaItem item) {
        Map<Column, String> cells = cells();
        cells.put(Column.KIND, item.kind().name());
        cells.put(Column.PLACE, item.placeName());
        cells.put(Column.HOLDER, item.holder());
        return cells;
    }

    /** The cells of the run's first item. */
    Map<Column, String> cellsWith(String firstCode) {
        Map<Column, String> cells = cells();
        cells.put(Column.CODE, firstCode);
        return cells;
    }
}

package rollbook.inventory;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import rollbook.production.Leg;
import rollbook.production.MediaKind;
import rollbook.production.Place;
import rollbook.quantity.Money;

/** Understands what somebody wrote about an item, on a form or on a line of a file, in the words of one production. */
final class ItemReading {
    private final List<Place> places;
    private final List<Leg> legs;
    private final Money money;

    ItemReading(List<Place> places, List<Leg> legs, Money money) {
        this.places = places;
        this.legs = legs;
        this.money = money;
    }

    /** The item, or all that is wrong with it. */
    record Read(@Nullable NewItem item, List<Problem> problems) {
        NewItem sound() {
            if (item == null) {
                throw new IllegalStateException("not understood: " + problems);
            }
            return item;
        }
    }

    Read read(Map<Column, String> cells) {
        var line = new ItemCells(cells);
        String code = line.code();
        MediaKind kind = line.word(Column.KIND, MediaKind.values(), null);
        String model = line.text(Column.MODEL, 100, true);
        Long capacity = capacity(line, kind);
        Long read = line.bytes(Column.READ, DecimalUnit.MEGABYTES);
        Long write = line.bytes(Column.WRITE, DecimalUnit.MEGABYTES);
        String serial = line.text(Column.SERIAL, ItemDetails.LONGEST_SERIAL, false);
        Ownership ownership = line.word(Column.OWNER, Ownership.values(), Ownership.BOUGHT);
        String supplier = line.text(Column.SUPPLIER, 100, false);
        Long cost = line.money(Column.COST, money);
        var hiredUntil = line.date(Column.HIRED_UNTIL);
        if (hiredUntil != null && ownership == Ownership.BOUGHT) {
            line.wrong(Column.HIRED_UNTIL, "inventory.problem.bought-until");
        }
        Leg leg = line.named(Column.LEG, legs, Leg::name, false);
        if (leg != null && kind != null && leg.mediaKind() != kind) {
            line.wrong(Column.LEG, "inventory.problem.leg-kind", leg.name(), word(leg.mediaKind()), word(kind));
        }
        Place place = line.named(Column.PLACE, places, Place::name, true);
        String holder = line.text(Column.HOLDER, 100, false);
        state(line, kind);
        if (!line.problems().isEmpty() || kind == null || ownership == null || place == null) {
            return new Read(null, line.problems());
        }
        var details = new ItemDetails(
                code,
                serial,
                model,
                capacity,
                read,
                write,
                ownership,
                supplier,
                cost,
                hiredUntil,
                leg == null ? null : leg.id());
        return new Read(new NewItem(kind, details, place.id(), holder), List.of());
    }

    private static @Nullable Long capacity(ItemCells line, @Nullable MediaKind kind) {
        if (line.filled(Column.CAPACITY_GB) && line.filled(Column.CAPACITY_TB)) {
            line.wrong(Column.CAPACITY_TB, "inventory.problem.two-capacities");
            return null;
        }
        if (!line.filled(Column.CAPACITY_GB)
                && !line.filled(Column.CAPACITY_TB)
                && kind != null
                && kind.hasCapacity()) {
            line.wrong(Column.CAPACITY_GB, "inventory.problem.no-capacity", word(kind));
            return null;
        }
        return line.filled(Column.CAPACITY_TB)
                ? line.bytes(Column.CAPACITY_TB, DecimalUnit.TERABYTES)
                : line.bytes(Column.CAPACITY_GB, DecimalUnit.GIGABYTES);
    }

    /** A list that this portal wrote has a state for each item. What is registered has no history, so only a fresh one fits. */
    private static void state(ItemCells line, @Nullable MediaKind kind) {
        String state = line.get(Column.STATE);
        String fresh = kind == MediaKind.CARD ? "blank" : "good";
        if (!state.isEmpty() && kind != null && !state.equalsIgnoreCase(fresh)) {
            line.wrong(Column.STATE, "inventory.problem.state", ItemCells.excerpt(state), fresh);
        }
    }

    private static String word(MediaKind kind) {
        return ItemCells.word(kind);
    }
}

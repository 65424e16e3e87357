package rollbook.inventory;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** What a correction changed, for the record: each field with what stood there before and what stands there now. */
final class Changes {
    private final List<String> changes = new ArrayList<>();

    private Changes() {}

    static String between(MediaItem before, ItemDetails after) {
        var found = new Changes();
        found.compare("code", before.code(), after.code());
        found.compare("serial", before.serial(), after.serial());
        found.compare("model", before.model(), after.model());
        found.compare("capacityBytes", before.capacityBytes(), after.capacityBytes());
        found.compare("readBytesPerSecond", before.readBytesPerSecond(), after.readBytesPerSecond());
        found.compare("writeBytesPerSecond", before.writeBytesPerSecond(), after.writeBytesPerSecond());
        found.compare("ownership", before.ownership(), after.ownership());
        found.compare("supplier", before.supplier(), after.supplier());
        found.compare("costMinorUnits", before.costMinorUnits(), after.costMinorUnits());
        found.compare("hiredUntil", before.hiredUntil(), after.hiredUntil());
        found.compare("leg", before.legId(), after.legId());
        return String.join("; ", found.changes);
    }

    private void compare(String field, @Nullable Object before, @Nullable Object after) {
        if (!Objects.equals(before, after)) {
            changes.add("%s: %s → %s".formatted(field, written(before), written(after)));
        }
    }

    private static String written(@Nullable Object value) {
        return value == null || value.equals("") ? "–" : value.toString();
    }
}

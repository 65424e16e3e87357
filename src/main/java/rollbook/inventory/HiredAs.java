package rollbook.inventory;

import java.time.LocalDate;
import java.util.UUID;

/** On what terms an item is hired, as an agreement says. */
public record HiredAs(UUID itemId, String supplier, long weekMinorUnits, LocalDate until) {}

package rollbook.inventory;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

/**
 * A hired item that has to go back.
 *
 * @param supplier empty if nobody wrote it down
 * @param hiredUntil the date on which it is due back
 */
public record HireReturn(
        UUID itemId, String code, String model, String supplier, LocalDate hiredUntil, Instant registeredAt) {}

package rollbook.production;

import java.util.UUID;

/**
 * A production's name, time zone, currency, working days or holidays have changed, and with them how lead times are
 * counted. Heard in the same transaction.
 */
public record ProductionChanged(UUID productionId) {}

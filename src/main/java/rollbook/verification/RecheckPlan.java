package rollbook.verification;

import org.jspecify.annotations.Nullable;
import rollbook.production.MediaKind;

/**
 * How often copies are to be read again and compared (fixity), by the kind of medium they lie on.
 *
 * @param driveDays days between two checks of a copy on a drive; null where none are planned
 */
public record RecheckPlan(
        @Nullable Integer driveDays,
        @Nullable Integer arrayDays,
        @Nullable Integer tapeDays,
        int version) {
    public static final RecheckPlan NONE = new RecheckPlan(null, null, null, 0);

    @Nullable
    Integer days(MediaKind kind) {
        return switch (kind) {
            case DRIVE -> driveDays;
            case ARRAY -> arrayDays;
            case TAPE -> tapeDays;
            case CARD, READER, ADAPTER -> null;
        };
    }

    public boolean isEmpty() {
        return driveDays == null && arrayDays == null && tapeDays == null;
    }
}

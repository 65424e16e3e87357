package rollbook.schedule;

import java.math.BigDecimal;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Implemented by the module that keeps the rolls: what was recorded on each shooting day. */
public interface RecordedRolls {
    /** Every roll of the production, in one statement. */
    List<Recorded> recorded(UUID productionId);

    /**
     * A roll.
     *
     * @param minutes null until it is pulled, and where nobody read them off
     * @param sizeBytes as recorded; null until an offload or a manifest tells
     */
    record Recorded(
            UUID dayId,
            UUID formatId,
            @Nullable BigDecimal minutes,
            @Nullable Long sizeBytes) {}
}

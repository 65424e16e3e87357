package rollbook.forecast;

import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A forecast that was kept, with what it was made from.
 *
 * @param computedAt when it was computed first; later runs that found the same inputs weren't kept again
 */
record ForecastRun(long id, Instant computedAt, Set<Because> because, ForecastInput inputs, StorageForecast results) {

    /**
     * Where a production's forecasts stand.
     *
     * @param newest null before the first one
     * @param checkedAt when the newest one was last found to hold
     * @param outdated whether something changed since, so that a new one is being computed
     * @param raisedLegs those whose pool has a flag up that nobody has put off
     * @param failure why there is no newer one; null if nothing failed
     */
    record Standing(
            @Nullable ForecastRun newest,
            @Nullable Instant checkedAt,
            boolean outdated,
            Set<UUID> raisedLegs,
            @Nullable Failure failure) {
        static final Standing NONE = new Standing(null, null, false, Set.of(), null);

        /** Empty before the first forecast, and while there is no leg or no shooting day to speak of. */
        Optional<ForecastRun> toTell() {
            return Optional.ofNullable(newest)
                    .filter(run -> checkedAt != null
                            && !run.inputs().days().isEmpty()
                            && !run.inputs().legs().isEmpty());
        }
    }
}

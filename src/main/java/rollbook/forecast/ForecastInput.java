package rollbook.forecast;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import rollbook.burndown.DayRef;
import rollbook.burndown.DayToCome;
import rollbook.burndown.Pool;
import rollbook.burndown.Show;
import rollbook.learning.Habits;
import rollbook.learning.ShotDay;
import rollbook.ordering.Offer;
import rollbook.ordering.ServiceLevel;
import rollbook.quantity.Share;

/**
 * All that a forecast is made from; the same input gives the same forecast, to the last digit.
 *
 * @param today the date in the production's zone for which the pools' figures hold
 * @param asOf a moment of today since when no supplier has stopped taking the day's orders
 * @param days every unit's shooting days; on one date the earlier in the list goes first
 * @param legs the pools of the copy plan's legs, in its order
 * @param offers what can be ordered, for each leg that is supplied
 * @param sources where each offer comes from, in their order
 * @param habits what was believed before the first day, and how fast it is unlearned
 * @param fillLevel how much of an item may be filled, such as 95/100
 * @param seed what chance is drawn from
 * @param replicates how many courses of the show are played
 */
record ForecastInput(
        LocalDate today,
        Instant asOf,
        List<ForecastDay> days,
        List<Leg> legs,
        List<Offer> offers,
        List<OfferSource> sources,
        Habits habits,
        Share fillLevel,
        ServiceLevel serviceLevel,
        long seed,
        int replicates) {

    static final int USUAL_REPLICATES = 10_000;

    /**
     * A leg of the copy plan with its pool.
     *
     * @param reduction what its encoding leaves and how that is known; as the copy plan says if it is as recorded
     */
    record Leg(Pool pool, Reduction reduction) {
        UUID id() {
            return pool.id();
        }
    }

    ForecastInput {
        if (fillLevel.numerator() > fillLevel.denominator()) {
            throw new IllegalArgumentException("Items can't be filled beyond their capacity: " + fillLevel);
        }
        days = days.stream().sorted(Comparator.comparing(ForecastDay::date)).toList();
        legs = List.copyOf(legs);
        offers = List.copyOf(offers);
        // Forecasts that were kept before suppliers had catalogues name none.
        sources = sources == null ? List.of() : List.copyOf(sources);
    }

    /** The date of the last day that isn't cancelled, but never before today. */
    LocalDate endOfShow() {
        return days.stream()
                .filter(day -> day.state() != ForecastDay.State.CANCELLED)
                .map(ForecastDay::date)
                .filter(date -> date.isAfter(today))
                .max(Comparator.naturalOrder())
                .orElse(today);
    }

    /** What a day that should be over and isn't wrapped still brings, it brings today. */
    Show show() {
        return new Show(
                today,
                days.stream()
                        .filter(ForecastDay::isStillToCome)
                        .map(day -> new DayToCome(
                                day.ref(),
                                day.date().isBefore(today) ? today : day.date(),
                                day.plannedBytes(),
                                day.actualBytes()))
                        .toList(),
                endOfShow());
    }

    List<ShotDay> shotDays() {
        return days.stream()
                .filter(ForecastDay::isShot)
                .map(day -> new ShotDay(
                        day.unit(), day.number(), day.date(), day.plannedBytes(), day.actualBytes(), day.minutes()))
                .toList();
    }

    List<Pool> pools() {
        return legs.stream().map(Leg::pool).toList();
    }

    Optional<Offer> offerFor(UUID poolId) {
        return offers.stream().filter(offer -> offer.poolId().equals(poolId)).findFirst();
    }

    Optional<OfferSource> sourceOf(UUID legId) {
        return sources.stream().filter(source -> source.legId().equals(legId)).findFirst();
    }

    /** Days dated before today that are neither wrapped nor cancelled. */
    List<DayRef> overdueDays() {
        return days.stream()
                .filter(day -> day.isStillToCome() && day.date().isBefore(today))
                .map(ForecastDay::ref)
                .toList();
    }
}

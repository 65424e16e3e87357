package rollbook.scenario;

import java.time.Clock;
import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.format.RecordingFormats;
import rollbook.inventory.MediaItems;
import rollbook.offload.ShowRates;
import rollbook.production.CopyPlan;
import rollbook.production.Membership;
import rollbook.schedule.DayState;
import rollbook.schedule.ShootingDay;
import rollbook.schedule.ShootingDays;
import rollbook.web.NotFoundException;

/** Gathers what the production knows of a shooting day. */
@Component
class DayFactsReading {
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm");

    private final ShootingDays days;
    private final RecordingFormats formats;
    private final MediaItems items;
    private final CopyPlan plan;
    private final DayRows rows;
    private final ShowRates rates;
    private final Clock clock;

    DayFactsReading(
            ShootingDays days,
            RecordingFormats formats,
            MediaItems items,
            CopyPlan plan,
            DayRows rows,
            ShowRates rates,
            Clock clock) {
        this.days = days;
        this.formats = formats;
        this.items = items;
        this.plan = plan;
        this.rows = rows;
        this.rates = rates;
        this.clock = clock;
    }

    /**
     * The day that is being shot or comes next, and what else could be looked at.
     *
     * @param chosen null if no day is left to be shot
     */
    record Found(@Nullable DayFacts chosen, List<ShootingDay> open) {}

    /** @throws NotFoundException if this production has no such day */
    Found of(Membership membership, @Nullable UUID dayId) {
        List<ShootingDay> all = days.list(membership.productionId());
        List<ShootingDay> open = all.stream().filter(day -> day.state().open()).toList();
        Optional<ShootingDay> chosen = dayId == null
                ? open.stream()
                        .filter(day -> day.state() == DayState.SHOOTING)
                        .findFirst()
                        .or(() -> open.stream().findFirst())
                : Optional.of(all.stream()
                        .filter(day -> day.id().equals(dayId))
                        .findFirst()
                        .orElseThrow(NotFoundException::new));
        return new Found(chosen.map(day -> facts(membership, day, all)).orElse(null), open);
    }

    private DayFacts facts(Membership membership, ShootingDay day, List<ShootingDay> all) {
        UUID production = membership.productionId();
        boolean shooting = day.state() == DayState.SHOOTING;
        List<UUID> together = all.stream()
                .filter(other -> other.date().equals(day.date()) && other.state() != DayState.CANCELLED)
                .map(ShootingDay::id)
                .toList();
        List<DayRows.Row> read = rows.rows(production, together);
        MediaFacts media = new MediaFacts(
                items.list(production), read, rates.of(production).rates(), shooting);
        CameraFacts cameras =
                new CameraFacts(rows.planned(production, together), formats.byId(production), read, shooting);
        return new DayFacts(
                day.id(),
                day.number(),
                day.unitName(),
                day.date(),
                cameras.list(media::typeOf),
                media.cardTypes(),
                media.readers(),
                media.adapters(),
                media.destinations(plan.legs(production)),
                media.measuredWays(),
                shooting ? tonight(membership, media, read) : null);
    }

    private DayFacts.Tonight tonight(Membership membership, MediaFacts media, List<DayRows.Row> read) {
        long rolls = read.stream()
                .filter(row -> row.kind() == DayRows.Kind.RECORDED)
                .mapToLong(DayRows.Row::times)
                .sum();
        LocalTime now = LocalTime.ofInstant(clock.instant(), membership.zone());
        return new DayFacts.Tonight(CLOCK.format(now), Math.toIntExact(rolls), media.cardsByState());
    }
}

package rollbook.reporting;

import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.forecast.Forecasts;
import rollbook.forecast.StorageOutlook;
import rollbook.production.Membership;
import rollbook.schedule.DayState;
import rollbook.schedule.ShootingDay;
import rollbook.schedule.ShootingDays;
import rollbook.verification.ProofSummaries;
import rollbook.verification.ProofSummary;
import rollbook.web.Display;

/**
 * What hangs on the wall: today's answers for whoever walks by, in few words and large. It names what the record says of
 * cards and offers no act.
 */
@Component
class WallPage {
    /** As many lines as fit a screen of 720 lines beside the rest. */
    private static final int LINES = 4;

    private final ProofSummaries proofs;
    private final Forecasts forecasts;
    private final ShootingDays days;
    private final OfficeRows rows;
    private final TodayPage today;
    private final Display display;
    private final Clock clock;

    WallPage(
            ProofSummaries proofs,
            Forecasts forecasts,
            ShootingDays days,
            OfficeRows rows,
            TodayPage today,
            Display display,
            Clock clock) {
        this.proofs = proofs;
        this.forecasts = forecasts;
        this.days = days;
        this.rows = rows;
        this.today = today;
        this.display = display;
        this.clock = clock;
    }

    /**
     * @param key of its title among the messages
     * @param says a sentence
     * @param lines the first few of what there is
     * @param more how many more lines there would be
     */
    record Block(String key, String says, List<String> lines, int more) {}

    /**
     * @param day the days that are being shot, or the next one
     * @param columns side by side where there is room
     */
    record View(String day, String sentence, List<String> alarms, List<List<Block>> columns) {}

    View view(Membership viewer) {
        UUID production = viewer.productionId();
        LocalDate date = LocalDate.ofInstant(clock.instant(), viewer.zone());
        ProofSummary proof = proofs.of(production);
        return new View(
                day(days.list(production), proof, date),
                today.handBack(proof),
                today.alarms(viewer, proof).stream().map(TodayPage.Detail::text).toList(),
                List.of(
                        List.of(cards("erase", proof.cleared()), cards("clear", proof.ready())),
                        List.of(held(proof), copying(proof)),
                        List.of(storage(production), late(rows.of(production, date, date), date))));
    }

    private String day(List<ShootingDay> all, ProofSummary proof, LocalDate date) {
        List<ShootingDay> shooting =
                all.stream().filter(day -> day.state() == DayState.SHOOTING).toList();
        if (!shooting.isEmpty()) {
            return shooting.stream()
                    .map(day -> display.text(
                            "reporting.wall.day",
                            day.number(),
                            day.unitName(),
                            proof.rollsOfDays().getOrDefault(day.id(), 0L)))
                    .reduce((one, other) -> one + " " + other)
                    .orElseThrow();
        }
        return all.stream()
                .filter(day -> day.state() == DayState.PLANNED && !day.date().isBefore(date))
                .min(Comparator.comparing(ShootingDay::date))
                .map(next -> display.text(
                        "reporting.wall.day.next", next.number(), next.unitName(), display.date(next.date())))
                .orElseGet(() -> display.text("reporting.wall.day.none"));
    }

    private Block cards(String key, List<ProofSummary.RollLine> of) {
        return block(key, display.text("reporting.wall." + key + ".says", of.size(), TodayPage.cards(of)), List.of());
    }

    private Block held(ProofSummary proof) {
        List<ProofSummary.RollLine> held =
                Stream.concat(proof.bad().stream(), proof.held().stream()).toList();
        return block("held", display.text("reporting.wall.held.says", held.size()), lines(held));
    }

    private Block copying(ProofSummary proof) {
        return block(
                "copying",
                display.text("reporting.wall.copying.says", proof.copying().size(), TodayPage.cards(proof.copying())),
                proof.exposed().isEmpty()
                        ? List.of()
                        : List.of(display.text(
                                "reporting.wall.exposed", proof.exposed().size(), TodayPage.cards(proof.exposed()))));
    }

    private Block storage(UUID production) {
        String says = forecasts
                .latest(production)
                .map(StorageOutlook::sentence)
                .orElseGet(() -> display.text("reporting.storage.unknown"));
        return block("storage", says, List.of());
    }

    private Block late(List<OfficeRows.Row> all, LocalDate date) {
        List<String> late = new ArrayList<>();
        for (OfficeRows.Row row : all) {
            String key = lateKey(row, date);
            if (key != null && row.date() != null) {
                late.add(display.text(key, row.name(), display.shortDate(row.date())));
            }
        }
        return block("late", display.text("reporting.wall.late.says", late.size()), late);
    }

    private static @Nullable String lateKey(OfficeRows.Row row, LocalDate date) {
        return switch (row.about()) {
            case AWAITED -> "reporting.orders.awaited";
            case DUE_BACK -> "reporting.wall.due-back";
            case UNDER_WAY -> row.date() != null && row.date().isBefore(date) ? "reporting.wall.under-way" : null;
            default -> null;
        };
    }

    private List<String> lines(List<ProofSummary.RollLine> of) {
        return of.stream()
                .map(line -> display.text("reporting.roll-line", line.rollCode(), line.cardCode(), line.says()))
                .toList();
    }

    private static Block block(String key, String says, List<String> lines) {
        int shown = Math.min(lines.size(), LINES);
        return new Block(key, says, lines.subList(0, shown), lines.size() - shown);
    }
}

package rollbook.verification;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.manifest.Verdict;
import rollbook.offload.Copies;
import rollbook.offload.Copy;
import rollbook.offload.Roll;
import rollbook.offload.Rolls;
import rollbook.production.ClearingRules;
import rollbook.production.CopyPlan;
import rollbook.production.Leg;
import rollbook.production.Membership;
import rollbook.schedule.DayState;
import rollbook.schedule.ShootingDay;
import rollbook.schedule.ShootingDays;
import rollbook.verification.ClearingGate.Hold;
import rollbook.web.Display;
import rollbook.web.NotFoundException;

/** The matrix of a day's rolls and the copy plan's legs. */
@Component
class RollBoard {
    private static final int NAMED = 5;

    private final Rolls rolls;
    private final Copies copies;
    private final Verdicts verdicts;
    private final CopyPlan plan;
    private final ShootingDays days;
    private final Overrides overrides;
    private final Display display;

    RollBoard(
            Rolls rolls,
            Copies copies,
            Verdicts verdicts,
            CopyPlan plan,
            ShootingDays days,
            Overrides overrides,
            Display display) {
        this.rolls = rolls;
        this.copies = copies;
        this.verdicts = verdicts;
        this.plan = plan;
        this.days = days;
        this.overrides = overrides;
        this.display = display;
    }

    /**
     * @param others copies that serve no leg of the plan
     * @param says what the card waits for, or what may be done
     * @param withoutProof who cleared the card without proof, or asks to; empty if nobody does
     */
    record Row(
            Roll roll,
            RollStanding standing,
            Map<UUID, List<Cell>> cells,
            List<Cell> others,
            String says,
            String withoutProof) {
        Stream<Cell> copies() {
            return Stream.concat(cells.values().stream().flatMap(List::stream), others.stream());
        }
    }

    /** @param note the number that explains the verdict, such as "3 files differ"; may be empty */
    record Cell(String itemCode, Verdict verdict, String note) {}

    record Board(
            String sentence,
            @Nullable ShootingDay day,
            @Nullable ShootingDay previous,
            @Nullable ShootingDay next,
            List<ShootingDay> sameDate,
            List<ShootingDay> days,
            List<Leg> legs,
            List<Row> rows,
            boolean hasOthers) {}

    /** The board of a day; of the day that is being shot or was shot last, if none is named. */
    Board board(Membership viewer, @Nullable UUID dayId) {
        List<ShootingDay> all = days.list(viewer.productionId());
        ClearingRules rules = plan.rules(viewer.productionId());
        List<Leg> legs = rules.legs();
        ShootingDay day = dayId == null ? current(all) : named(all, dayId);
        if (day == null) {
            return new Board(
                    display.text("verification.rolls.no-days"),
                    null,
                    null,
                    null,
                    List.of(),
                    all,
                    legs,
                    List.of(),
                    false);
        }
        List<Row> rows = rows(viewer.productionId(), day, rules);
        List<ShootingDay> ofUnit = all.stream()
                .filter(other -> other.unitId().equals(day.unitId()))
                .toList();
        int position = ofUnit.indexOf(day);
        return new Board(
                sentence(rows, day),
                day,
                position > 0 ? ofUnit.get(position - 1) : null,
                position + 1 < ofUnit.size() ? ofUnit.get(position + 1) : null,
                all.stream()
                        .filter(other -> other.date().equals(day.date()) && !other.equals(day))
                        .toList(),
                all,
                legs,
                rows,
                rows.stream().anyMatch(row -> !row.others().isEmpty()));
    }

    private List<Row> rows(UUID productionId, ShootingDay day, ClearingRules rules) {
        Map<UUID, CopyVerdict> judged = verdicts.ofDay(productionId, day.id());
        Map<UUID, List<Copy>> byRoll =
                copies.ofDay(productionId, day.id()).stream().collect(Collectors.groupingBy(Copy::rollId));
        Map<UUID, String> withoutProof = withoutProof(productionId);
        return rolls.ofDay(productionId, day.id()).stream()
                .map(roll -> row(
                        roll,
                        new Proof(rules, byRoll.getOrDefault(roll.id(), List.of()), judged),
                        withoutProof.getOrDefault(roll.id(), "")))
                .sorted(Comparator.comparing((Row row) -> row.standing().state())
                        .thenComparing(row -> row.roll().code()))
                .toList();
    }

    /** Who cleared a roll's card without proof, or asks to, by roll. */
    private Map<UUID, String> withoutProof(UUID productionId) {
        Map<UUID, String> says = new HashMap<>();
        overrides
                .standing(productionId)
                .forEach(override -> says.putIfAbsent(
                        override.rollId(),
                        override.isApproved()
                                ? display.text(
                                        "verification.override.short",
                                        override.requestedByName(),
                                        override.approvedByName())
                                : display.text("verification.override.asked-short", override.requestedByName())));
        return says;
    }

    private Row row(Roll roll, Proof proof, String withoutProof) {
        Map<UUID, List<Cell>> cells = new HashMap<>();
        proof.legs().forEach(leg -> cells.put(leg.id(), new ArrayList<>()));
        List<Cell> others = new ArrayList<>();
        for (Copy copy : proof.copies()) {
            List<Cell> cell = copy.legId() == null ? others : cells.getOrDefault(copy.legId(), others);
            cell.add(cell(copy, proof.verdicts().get(copy.id())));
        }
        RollStanding standing = RollStanding.of(roll, proof);
        return new Row(roll, standing, cells, others, says(standing), withoutProof);
    }

    private Cell cell(Copy copy, @Nullable CopyVerdict verdict) {
        return verdict == null
                ? new Cell(copy.itemCode(), Verdict.UNKNOWN, "")
                : new Cell(copy.itemCode(), verdict.verdict(), note(verdict));
    }

    String note(CopyVerdict verdict) {
        CopyVerdict.Counts counts = verdict.counts();
        return switch (verdict.verdict()) {
            case FAILED -> display.text("verification.note.failed", counts.wrong());
            case INCOMPLETE -> display.text("verification.note.incomplete", counts.missing());
            case SIZE_ONLY -> display.text("verification.note.size-only", counts.sizeOnly());
            case PROVEN, CONSISTENT, UNKNOWN -> "";
        };
    }

    String says(RollStanding standing) {
        return standing.isHeld()
                ? says(standing.holds().get(0))
                : display.text("verification.standing." + standing.state().name());
    }

    String says(Hold hold) {
        return display.text(hold.key(), hold.args().toArray());
    }

    /** What may be erased, and what is held by which fault: the answer to the page's question. */
    private String sentence(List<Row> rows, ShootingDay day) {
        List<String> parts = new ArrayList<>();
        part(parts, rows, CardStanding.CLEARED, "verification.rolls.may-erase");
        part(parts, rows, CardStanding.READY, "verification.rolls.may-clear");
        rows.stream()
                .filter(row -> row.standing().state() == CardStanding.BAD_COPY)
                .limit(NAMED)
                .forEach(row -> parts.add(display.text(
                        "verification.rolls.held",
                        row.roll().code(),
                        says(row.standing().holds().get(0)))));
        part(parts, rows, CardStanding.HELD, "verification.rolls.waiting");
        part(parts, rows, CardStanding.EXPOSED, "verification.rolls.exposed");
        if (parts.isEmpty()) {
            parts.add(display.text(
                    rows.isEmpty() ? "verification.rolls.none" : "verification.rolls.settled", day.number()));
        }
        return String.join(" ", parts);
    }

    private void part(List<String> parts, List<Row> rows, CardStanding state, String key) {
        List<String> codes = rows.stream()
                .filter(row -> row.standing().state() == state)
                .map(row -> row.roll().cardCode() + " (" + row.roll().code() + ")")
                .toList();
        if (!codes.isEmpty()) {
            String named = String.join(", ", codes.subList(0, Math.min(NAMED, codes.size())));
            parts.add(display.text(key, codes.size(), codes.size() > NAMED ? named + "…" : named));
        }
    }

    /** The day being shot, of the first unit if several shoot; else the one that wrapped last. */
    private static @Nullable ShootingDay current(List<ShootingDay> days) {
        return days.stream()
                .filter(day -> day.state() == DayState.SHOOTING)
                .findFirst()
                .or(() -> lastWrapped(days))
                .or(() -> days.stream().findFirst())
                .orElse(null);
    }

    private static Optional<ShootingDay> lastWrapped(List<ShootingDay> days) {
        return days.stream().filter(day -> day.state() == DayState.WRAPPED).reduce((earlier, later) -> later);
    }

    private static ShootingDay named(List<ShootingDay> days, UUID dayId) {
        return days.stream().filter(day -> day.id().equals(dayId)).findFirst().orElseThrow(NotFoundException::new);
    }
}

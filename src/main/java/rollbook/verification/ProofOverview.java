package rollbook.verification;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import rollbook.manifest.Verdict;
import rollbook.production.Leg;
import rollbook.verification.ProofStrips.CopyFact;
import rollbook.verification.ProofStrips.Day;
import rollbook.verification.ProofStrips.Mark;
import rollbook.verification.ProofStrips.Strip;
import rollbook.web.Display;

/** All days at a glance: which are proven on which leg. */
@Component
class ProofOverview {
    private static final int NAMED = 4;

    private final JdbcClient jdbc;
    private final Display display;

    ProofOverview(JdbcClient jdbc, Display display) {
        this.jdbc = jdbc;
        this.display = display;
    }

    /**
     * @param open days on which something is left to prove, the newest first
     * @param settled the others
     * @param clips how many clips the documents list of each roll of the day that was asked for
     */
    record View(String sentence, List<Leg> legs, List<DayView> open, List<DayView> settled, Map<UUID, Integer> clips) {
        /** Whether no roll was ever logged. */
        public boolean isEmpty() {
            return open.isEmpty() && settled.isEmpty();
        }
    }

    record DayView(UUID id, String name, LocalDate date, List<Cell> cells) {}

    /**
     * @param says how many are proven
     * @param rest what the others are, in words; empty if nothing is to be said
     */
    record Cell(List<Mark> marks, String says, String rest) {}

    /**
     * In one statement.
     *
     * @param day whose rolls' clips are counted; null for none
     */
    View view(UUID productionId, List<Leg> legs, @Nullable UUID day) {
        Map<UUID, Integer> clips = new HashMap<>();
        List<CopyFact> facts = jdbc.sql("""
                        select r.id as roll_id, r.day_id, d.number, u.name as unit_name, d.date, c.leg_id,
                               c.erased_at is not null as erased, newest.verdict,
                               case when r.day_id = :day then (
                                 select count(distinct k.clip)::int from verification_assignment a
                                 join verification_clip k on k.part_id = a.part_id
                                 where a.roll_id = r.id
                                   and not exists (select 1 from verification_assignment later where later.replaces = a.id)
                               ) end as clips
                        from offload_roll r
                        join schedule_day d on d.id = r.day_id
                        join production_unit u on u.id = d.unit_id
                        left join offload_copy c on c.roll_id = r.id and c.leg_id is not null
                        left join lateral (select v.verdict from verification_verdict v where v.copy_id = c.id
                                           order by v.id desc limit 1) newest on true
                        where r.production_id = :production
                        order by d.date desc, u.position, r.code
                        """)
                .param("production", productionId)
                .param("day", day)
                .query((row, number) -> {
                    UUID roll = row.getObject("roll_id", UUID.class);
                    Integer counted = row.getObject("clips", Integer.class);
                    if (counted != null && counted > 0) {
                        clips.put(roll, counted);
                    }
                    String verdict = row.getString("verdict");
                    return new CopyFact(
                            roll,
                            row.getObject("day_id", UUID.class),
                            row.getInt("number"),
                            row.getString("unit_name"),
                            row.getObject("date", LocalDate.class),
                            row.getObject("leg_id", UUID.class),
                            row.getBoolean("erased"),
                            verdict == null ? null : Verdict.valueOf(verdict));
                })
                .list();
        return view(ProofStrips.of(legs, facts), clips);
    }

    private View view(ProofStrips strips, Map<UUID, Integer> clips) {
        return new View(
                sentence(strips),
                strips.legs(),
                strips.days().stream()
                        .filter(day -> !day.isSettled())
                        .map(this::day)
                        .toList(),
                strips.days().stream().filter(Day::isSettled).map(this::day).toList(),
                clips);
    }

    private DayView day(Day day) {
        return new DayView(
                day.id(),
                name(day),
                day.date(),
                day.strips().stream().map(this::cell).toList());
    }

    private String name(Day day) {
        return display.text("verification.rolls.day", day.number(), day.unitName());
    }

    private Cell cell(Strip strip) {
        String rest = strip.counts().entrySet().stream()
                .filter(count -> count.getKey() != Mark.PROVEN)
                .map(count -> display.text("verification.overview.mark." + count.getKey(), count.getValue()))
                .collect(Collectors.joining(", "));
        return new Cell(
                strip.marks(),
                display.text(
                        "verification.overview.proven",
                        strip.count(Mark.PROVEN),
                        strip.marks().size()),
                rest);
    }

    private String sentence(ProofStrips strips) {
        List<String> parts = new ArrayList<>();
        String legs = IntStream.range(0, strips.legs().size())
                .mapToObj(leg -> display.text(
                        "verification.overview.on-leg",
                        strips.proven(leg),
                        strips.legs().get(leg).name()))
                .collect(Collectors.joining(", "));
        parts.add(display.text("verification.overview.sentence", strips.rolls(), legs));
        List<String> open = strips.days().stream()
                .filter(day -> !day.isSettled())
                .map(this::name)
                .toList();
        if (open.isEmpty()) {
            parts.add(display.text("verification.overview.all-settled"));
        } else {
            String named = String.join(", ", open.subList(0, Math.min(NAMED, open.size())));
            parts.add(
                    open.size() > NAMED
                            ? display.text("verification.overview.open-more", named, open.size() - NAMED)
                            : display.text("verification.overview.open", named));
        }
        return String.join(" ", parts);
    }
}

package rollbook.verification;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.manifest.Verdict;
import rollbook.production.MediaKind;
import rollbook.production.Membership;
import rollbook.verification.RecheckSchedule.CheckedCopy;
import rollbook.verification.RecheckSchedule.Due;
import rollbook.web.Refusal;

/** The re-checks of copies: what is planned, what is due, and which have failed. */
@Service
public class Rechecks {
    private final JdbcClient jdbc;
    private final AuditTrail trail;
    private final Clock clock;

    Rechecks(JdbcClient jdbc, AuditTrail trail, Clock clock) {
        this.jdbc = jdbc;
        this.trail = trail;
        this.clock = clock;
    }

    RecheckPlan plan(UUID productionId) {
        return jdbc.sql("""
                        select drive_days, array_days, tape_days, version from verification_recheck_plan where production_id = ?
                        """)
                .param(productionId)
                .query(RecheckPlan.class)
                .optional()
                .orElse(RecheckPlan.NONE);
    }

    /** @throws Refusal if somebody else changed the plan meanwhile */
    @Transactional
    public void changePlan(Membership by, RecheckPlan plan) {
        int changed = jdbc.sql("""
                        insert into verification_recheck_plan as old (production_id, drive_days, array_days, tape_days, version)
                        select :production, :drive, :array, :tape, :version + 1
                        where :version = 0 or exists (select 1 from verification_recheck_plan where production_id = :production)
                        on conflict (production_id) do update set drive_days = excluded.drive_days,
                            array_days = excluded.array_days, tape_days = excluded.tape_days, version = excluded.version
                        where old.version = :version
                        """)
                .param("production", by.productionId())
                .param("drive", plan.driveDays())
                .param("array", plan.arrayDays())
                .param("tape", plan.tapeDays())
                .param("version", plan.version())
                .update();
        if (changed == 0) {
            throw new Refusal("verification.refused.recheck-plan-changed");
        }
        trail.add(by.act("recheck-plan.changed", "recheck-plan", by.code(), onRecord(plan)));
    }

    private static String onRecord(RecheckPlan plan) {
        return "drives: %s, arrays: %s, tapes: %s"
                .formatted(days(plan.driveDays()), days(plan.arrayDays()), days(plan.tapeDays()));
    }

    private static String days(@Nullable Integer days) {
        return days == null ? "none" : "every " + days + " days";
    }

    /** The media whose copies are planned to be read again, the most pressing first. */
    List<Due> schedule(Membership viewer) {
        List<Row> rows = rows(viewer.productionId());
        if (rows.isEmpty()) {
            return List.of();
        }
        RecheckPlan plan = rows.get(0).plan();
        LocalDate today = LocalDate.ofInstant(clock.instant(), viewer.zone());
        return RecheckSchedule.of(
                rows.stream().map(row -> row.copy(viewer.zone())).toList(), plan, today);
    }

    /** How many media are due or overdue. */
    public Pressing pressing(Membership viewer) {
        List<Due> all = schedule(viewer);
        return new Pressing(
                count(all, RecheckSchedule.State.OVERDUE),
                count(all, RecheckSchedule.State.DUE),
                all.isEmpty() ? null : all.get(0).itemCode());
    }

    /**
     * What a person must deal with.
     *
     * @param mostPressing the medium that comes first; null if none is planned
     */
    public record Pressing(int overdue, int due, @Nullable String mostPressing) {}

    /**
     * The media that must be read again by a date.
     *
     * @param newestCheckOn the newest of the last checks that make them due then
     */
    public record DueDate(LocalDate date, List<String> itemCodes, LocalDate newestCheckOn) {}

    /** By which dates which media are due, dates that have passed included. */
    public List<DueDate> dueDates(Membership viewer) {
        Map<LocalDate, List<Due>> byDate =
                schedule(viewer).stream().collect(Collectors.groupingBy(Due::dueOn, TreeMap::new, Collectors.toList()));
        return byDate.entrySet().stream()
                .map(due -> new DueDate(
                        due.getKey(),
                        due.getValue().stream().map(Due::itemCode).toList(),
                        due.getValue().stream()
                                .map(Due::checkedOn)
                                .max(LocalDate::compareTo)
                                .orElseThrow()))
                .toList();
    }

    private static int count(List<Due> all, RecheckSchedule.State state) {
        return (int) all.stream().filter(due -> due.state() == state).count();
    }

    private record Row(
            UUID itemId,
            String itemCode,
            MediaKind kind,
            String placeName,
            String rollCode,
            Instant checkedAt,
            @Nullable Integer driveDays,
            @Nullable Integer arrayDays,
            @Nullable Integer tapeDays) {

        RecheckPlan plan() {
            return new RecheckPlan(driveDays, arrayDays, tapeDays, 0);
        }

        CheckedCopy copy(ZoneId zone) {
            return new CheckedCopy(itemId, itemCode, kind, placeName, rollCode, LocalDate.ofInstant(checkedAt, zone));
        }
    }

    /**
     * Copies on good media that were found equal, and when, beside the plan; none without a plan. A check is as old as
     * its document says, or as its arrival if it says a later date or none: nobody can send what wasn't read yet.
     */
    private List<Row> rows(UUID productionId) {
        return jdbc.sql("""
                        select i.id as item_id, i.code as item_code, i.kind, p.name as place_name, r.code as roll_code,
                               least(d.uploaded_at, g.created_on) as checked_at, plan.drive_days, plan.array_days, plan.tape_days
                        from verification_recheck_plan plan
                        join (select distinct on (v.copy_id) v.copy_id, v.production_id, v.verdict, v.evidence_part_id
                              from verification_verdict v where v.production_id = :production
                              order by v.copy_id, v.id desc) newest on newest.production_id = plan.production_id
                        join offload_copy c on c.id = newest.copy_id and c.erased_at is null
                        join offload_roll r on r.id = c.roll_id
                        join inventory_item i on i.id = c.item_id
                        join production_place p on p.id = i.place_id
                        join verification_part part on part.id = newest.evidence_part_id
                        join verification_document d on d.id = part.document_id
                        join verification_reading g on g.document_id = d.id
                        where plan.production_id = :production and newest.verdict in ('PROVEN', 'CONSISTENT')
                          and i.condition = 'GOOD'
                        order by i.code, r.code
                        """).param("production", productionId).query(Row.class).list();
    }

    /**
     * A copy that was proven, was relied on, and no longer is.
     *
     * @param verdictId the newest verdict on it, which names the files
     * @param bad files that differ or are missing
     * @param erasedAt when the card was erased on the strength of it; null if it wasn't
     */
    record Failed(
            UUID rollId,
            String rollCode,
            String cardCode,
            String itemCode,
            long verdictId,
            Verdict verdict,
            long bad,
            Instant raisedAt,
            @Nullable Instant erasedAt,
            String othersProven) {}

    /** Open alarms, newest first: those whose copy is still not proven. */
    List<Failed> failed(UUID productionId) {
        return jdbc.sql("""
                        select a.roll_id, r.code as roll_code, card.code as card_code, i.code as item_code,
                               newest.id as verdict_id, newest.verdict,
                               newest.different + newest.missing + newest.listed_twice as bad, a.raised_at,
                               (select max(e.erased_at) from verification_clearance k
                                join verification_erasure e on e.clearance_id = k.id where k.roll_id = r.id) as erased_at,
                               coalesce((select string_agg(oi.code, ', ' order by oi.code) from offload_copy o
                                join inventory_item oi on oi.id = o.item_id
                                where o.roll_id = r.id and o.id <> a.copy_id and o.rendition = c.rendition and oi.condition = 'GOOD'
                                  and o.erased_at is null
                                  and (select v.verdict from verification_verdict v where v.copy_id = o.id
                                       order by v.id desc limit 1) = 'PROVEN'), '') as others_proven
                        from (select distinct on (copy_id) copy_id, roll_id, raised_at from verification_alarm
                              where production_id = ? order by copy_id, id desc) a
                        join offload_roll r on r.id = a.roll_id
                        join inventory_item card on card.id = r.card_id
                        join offload_copy c on c.id = a.copy_id
                        join inventory_item i on i.id = c.item_id
                        join lateral (select v.* from verification_verdict v where v.copy_id = a.copy_id
                                      order by v.id desc limit 1) newest on newest.verdict <> 'PROVEN'
                        order by a.raised_at desc, r.code, i.code
                        """).param(productionId).query(Failed.class).list();
    }
}

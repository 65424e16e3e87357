package rollbook.report;

import java.nio.charset.StandardCharsets;
import java.sql.Timestamp;
import java.time.Clock;
import java.util.HexFormat;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.production.Membership;
import rollbook.schedule.DayState;
import rollbook.schedule.ShootingDay;
import rollbook.schedule.ShootingDays;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** Signatures below the reports of shooting days: kept for good, with the facts as they were when they were signed. */
@Service
public class SignOffs {
    private static final int DIGITS_ON_RECORD = 12;

    private static final String SIGN_OFFS = """
            select s.id, s.day_id, encode(s.sha256, 'hex') as sha256, s.signed_at, s.signed_by, p.display_name as signed_by_name,
                   s.remark, %s as content, w.withdrawn_at, w.reason as withdrawn_reason
            from report_sign_off s
            join people_person p on p.id = s.signed_by
            join report_facts f on f.production_id = s.production_id and f.sha256 = s.sha256
            left join report_sign_off_withdrawal w on w.sign_off_id = s.id
            where s.production_id = :production
            """;

    private final JdbcClient jdbc;
    private final DayReports reports;
    private final ShootingDays days;
    private final AuditTrail trail;
    private final Clock clock;

    SignOffs(JdbcClient jdbc, DayReports reports, ShootingDays days, AuditTrail trail, Clock clock) {
        this.jdbc = jdbc;
        this.reports = reports;
        this.days = days;
        this.trail = trail;
        this.clock = clock;
    }

    /** In the order in which they were given, those that were withdrawn too. */
    List<SignOff> ofDay(UUID productionId, UUID dayId) {
        return jdbc.sql(SIGN_OFFS.formatted("f.content") + " and s.day_id = :day order by s.signed_at, s.id")
                .param("production", productionId)
                .param("day", dayId)
                .query(SignOff.class)
                .list();
    }

    /** Those of all days, without what was signed. */
    List<SignOff> all(UUID productionId) {
        return jdbc.sql(SIGN_OFFS.formatted("''") + " order by s.signed_at, s.id")
                .param("production", productionId)
                .query(SignOff.class)
                .list();
    }

    /** @throws NotFoundException if the day has no such signature */
    SignOff get(UUID productionId, UUID dayId, UUID signOffId) {
        return ofDay(productionId, dayId).stream()
                .filter(signOff -> signOff.id().equals(signOffId))
                .findFirst()
                .orElseThrow(NotFoundException::new);
    }

    /** Signs a wrapped day's report as it stands. */
    @Transactional
    public void sign(Membership by, UUID dayId, String remark) {
        ShootingDay day = lock(by, dayId);
        keep(by, day, reports.of(by.productionId(), dayId).sheet(), remark);
    }

    /**
     * Signs a wrapped day's report as the person saw it.
     *
     * @param seenSha256 of the facts that the person saw
     * @throws Refusal if the day isn't wrapped, something changed since, or the person has signed just that
     */
    @Transactional
    public void sign(Membership by, UUID dayId, String seenSha256, String remark) {
        ShootingDay day = lock(by, dayId);
        FactSheet sheet = reports.of(by.productionId(), dayId).sheet();
        if (!sheet.sha256().equals(seenSha256)) {
            throw new Refusal("report.refused.changed", day.number());
        }
        keep(by, day, sheet, remark);
    }

    /** Keeps others from signing, and the day from being opened again, until the transaction ends. */
    private ShootingDay lock(Membership by, UUID dayId) {
        jdbc.sql("select id from schedule_day where production_id = ? and id = ? for no key update")
                .params(by.productionId(), dayId)
                .query(UUID.class)
                .optional()
                .orElseThrow(NotFoundException::new);
        ShootingDay day = days.get(by.productionId(), dayId);
        if (day.state() != DayState.WRAPPED) {
            throw new Refusal("report.refused.not-wrapped", day.number());
        }
        return day;
    }

    private void keep(Membership by, ShootingDay day, FactSheet sheet, String remark) {
        String sha256 = sheet.sha256();
        if (ofDay(by.productionId(), day.id()).stream()
                .anyMatch(other -> other.stands()
                        && other.signedBy().equals(by.personId())
                        && other.sha256().equals(sha256))) {
            throw new Refusal("report.refused.signed-already", day.number());
        }
        byte[] digest = HexFormat.of().parseHex(sha256);
        jdbc.sql("insert into report_facts (production_id, sha256, content) values (?, ?, ?) on conflict do nothing")
                .params(by.productionId(), digest, new String(sheet.bytes(), StandardCharsets.UTF_8))
                .update();
        jdbc.sql("""
                        insert into report_sign_off (id, production_id, day_id, sha256, signed_at, signed_by, remark)
                        values (?, ?, ?, ?, ?, ?, ?)
                        """)
                .params(
                        UUID.randomUUID(),
                        by.productionId(),
                        day.id(),
                        digest,
                        Timestamp.from(clock.instant()),
                        by.personId(),
                        remark.strip())
                .update();
        trail.add(by.act(
                "report.signed", "day", day.code(), day.unitName() + ", " + sha256.substring(0, DIGITS_ON_RECORD)));
    }

    /**
     * Takes a person's own signature back.
     *
     * @throws Refusal if it is another person's, or was taken back already
     */
    @Transactional
    public void withdraw(Membership by, UUID dayId, UUID signOffId, String reason) {
        SignOff signOff = get(by.productionId(), dayId, signOffId);
        if (!signOff.signedBy().equals(by.personId())) {
            throw new Refusal("report.refused.not-own", signOff.signedByName());
        }
        int withdrawn = jdbc.sql("""
                        insert into report_sign_off_withdrawal (sign_off_id, withdrawn_at, withdrawn_by, reason)
                        values (?, ?, ?, ?) on conflict do nothing
                        """)
                .params(signOffId, Timestamp.from(clock.instant()), by.personId(), reason.strip())
                .update();
        if (withdrawn == 0) {
            throw new Refusal("report.refused.withdrawn-already");
        }
        ShootingDay day = days.get(by.productionId(), dayId);
        trail.add(by.act("report.sign-off-withdrawn", "day", day.code(), day.unitName() + ": " + reason.strip()));
    }
}

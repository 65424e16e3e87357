package rollbook.offload;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.production.Membership;
import rollbook.web.Refusal;

/** Corrections of what was logged of rolls. */
@Service
class RollCorrections {
    private final JdbcClient jdbc;
    private final Rolls rolls;
    private final AuditTrail trail;
    private final ApplicationEventPublisher events;

    RollCorrections(JdbcClient jdbc, Rolls rolls, AuditTrail trail, ApplicationEventPublisher events) {
        this.jdbc = jdbc;
        this.rolls = rolls;
        this.trail = trail;
        this.events = events;
    }

    /**
     * Corrects what was logged of a roll.
     *
     * @throws Refusal if somebody else changed the roll meanwhile, or the code is another roll's
     */
    @Transactional
    public void correct(
            Membership by,
            UUID rollId,
            String code,
            UUID dayId,
            UUID formatId,
            BigDecimal minutes,
            String note,
            int version) {
        Roll roll = rolls.lock(by.productionId(), rollId);
        if (roll.pulledAt() == null) {
            throw new Refusal("offload.refused.not-pulled", roll.code());
        }
        try {
            int updated = jdbc.sql("""
                            update offload_roll r set code = :code, day_id = d.id, format_id = f.id, minutes = :minutes,
                                note = :note, version = r.version + 1
                            from schedule_day d, format_recording_format f
                            where r.production_id = :production and r.id = :id and r.version = :version
                              and d.id = :day and d.production_id = :production
                              and f.id = :format and f.production_id = :production
                            """)
                    .param("code", code.strip().toUpperCase(Locale.ROOT))
                    .param("minutes", minutes)
                    .param("note", note)
                    .param("production", by.productionId())
                    .param("id", rollId)
                    .param("version", version)
                    .param("day", dayId)
                    .param("format", formatId)
                    .update();
            if (updated == 0) {
                throw new Refusal("offload.refused.changed-meanwhile", roll.code());
            }
        } catch (DuplicateKeyException e) {
            throw new Refusal("offload.refused.roll-exists", code.strip().toUpperCase(Locale.ROOT));
        }
        trail.add(
                by.act("roll.corrected", "roll", roll.code(), differences(roll, rolls.get(by.productionId(), rollId))));
        events.publishEvent(new RollChanged(by.productionId(), rollId));
    }

    /** What a correction changed, so that the record keeps what stood there before. */
    private static String differences(Roll before, Roll after) {
        Map<String, Function<Roll, Object>> kept = new LinkedHashMap<>();
        kept.put("code", Roll::code);
        kept.put("day", roll -> roll.unitName() + " " + roll.dayNumber());
        kept.put("format", Roll::formatId);
        kept.put("minutes", Roll::minutes);
        kept.put("note", Roll::note);
        return kept.entrySet().stream()
                .filter(value ->
                        !value.getValue().apply(before).equals(value.getValue().apply(after)))
                .map(value -> "%s: %s → %s"
                        .formatted(
                                value.getKey(),
                                value.getValue().apply(before),
                                value.getValue().apply(after)))
                .collect(Collectors.joining("; "));
    }
}

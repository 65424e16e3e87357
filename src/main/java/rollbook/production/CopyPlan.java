package rollbook.production;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.RowMapper;
import org.springframework.jdbc.core.SimplePropertyRowMapper;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** The copy plan of a production, and what clears media. */
@Service
public class CopyPlan {
    private static final String LEGS = """
            select l.id, l.name, l.media_kind, l.place_id, p.name as place_name, l.rendition, l.kept_percent,
                   l.returns_after_days, l.needed_to_clear, l.version
            from production_leg l join production_place p on p.id = l.place_id
            where l.production_id = ?
            """;

    private static final RowMapper<Leg> LEG = new SimplePropertyRowMapper<>(Leg.class);

    private final JdbcClient jdbc;
    private final PlanSentences sentences;
    private final AuditTrail trail;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    CopyPlan(
            JdbcClient jdbc, PlanSentences sentences, AuditTrail trail, ApplicationEventPublisher events, Clock clock) {
        this.jdbc = jdbc;
        this.sentences = sentences;
        this.clock = clock;
        this.trail = trail;
        this.events = events;
    }

    public List<Leg> legs(UUID productionId) {
        return jdbc.sql(LEGS + " order by l.position, l.name")
                .param(productionId)
                .query(Leg.class)
                .list();
    }

    /** The clearing policies and the legs, in one statement. */
    public ClearingRules rules(UUID productionId) {
        Map<MediaKind, ClearingPolicy> policies = new EnumMap<>(MediaKind.class);
        Map<UUID, Leg> legs = new LinkedHashMap<>();
        jdbc.sql("""
                        select c.subject, c.proven_copies, c.items, c.media_kinds, c.places, c.off_site, c.checked_within_days,
                               c.source_hash_needed, c.round_trip_needed, c.version as policy_version,
                               l.id, l.name, l.media_kind, l.place_id, p.name as place_name, l.rendition, l.kept_percent,
                               l.returns_after_days, l.needed_to_clear, l.version
                        from production_clearing_policy c
                        left join production_leg l on l.production_id = c.production_id
                        left join production_place p on p.id = l.place_id
                        where c.production_id = ? order by l.position, l.name
                        """)
                .param(productionId)
                .query((row, number) -> {
                    ClearingPolicy policy = policy(row, "policy_version");
                    policies.put(policy.subject(), policy);
                    if (row.getObject("id") != null) {
                        Leg leg = LEG.mapRow(row, number);
                        legs.putIfAbsent(leg.id(), leg);
                    }
                    return number;
                })
                .list();
        return new ClearingRules(policies, List.copyOf(legs.values()), clock.instant());
    }

    /**
     * The rules for whoever grants something by them: until the transaction ends, nobody who changed them goes on past
     * {@link #awaitGrants}. Several may grant at once.
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public ClearingRules rulesToGrantBy(UUID productionId) {
        lock(productionId, "for share");
        return rules(productionId);
    }

    /**
     * For whoever changed the rules, before a look at what stands: waits for those who grant by the old ones, so that what
     * they granted is seen. Whoever comes later reads the new rules.
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public void awaitGrants(UUID productionId) {
        lock(productionId, "for no key update");
    }

    private void lock(UUID productionId, String strength) {
        jdbc.sql("select id from production_production where id = ? " + strength)
                .param(productionId)
                .query(UUID.class)
                .single();
    }

    private static ClearingPolicy policy(ResultSet row, String version) throws SQLException {
        return new ClearingPolicy(
                MediaKind.valueOf(row.getString("subject")),
                row.getInt("proven_copies"),
                row.getInt("items"),
                row.getInt("media_kinds"),
                row.getInt("places"),
                row.getBoolean("off_site"),
                row.getObject("checked_within_days", Integer.class),
                row.getBoolean("source_hash_needed"),
                row.getBoolean("round_trip_needed"),
                row.getInt(version));
    }

    public Leg leg(UUID productionId, UUID legId) {
        return jdbc.sql(LEGS + " and l.id = ?")
                .params(productionId, legId)
                .query(Leg.class)
                .optional()
                .orElseThrow(NotFoundException::new);
    }

    /** What clears a medium of a kind. */
    public ClearingPolicy policy(UUID productionId, MediaKind subject) {
        return jdbc.sql("select * from production_clearing_policy where production_id = ? and subject = ?")
                .params(productionId, subject.name())
                .query((row, number) -> policy(row, "version"))
                .optional()
                .orElseThrow(NotFoundException::new);
    }

    /**
     * Adds a leg; its id and version are ignored.
     *
     * @throws Refusal if a leg of that name exists
     */
    @Transactional
    public UUID addLeg(Membership by, Leg leg) {
        UUID id = UUID.randomUUID();
        requirePlace(by, leg);
        int added = jdbc.sql("""
                        insert into production_leg (id, production_id, name, media_kind, place_id, rendition, kept_percent,
                                                    returns_after_days, needed_to_clear, position)
                        select :id, :production, :name, :mediaKind, :placeId, :rendition, :keptPercent, :returnsAfterDays,
                               :neededToClear, coalesce(max(position), 0) + 1 from production_leg where production_id = :production
                        on conflict do nothing
                        """)
                .param("id", id)
                .param("production", by.productionId())
                .param("name", leg.name())
                .param("mediaKind", leg.mediaKind().name())
                .param("placeId", leg.placeId())
                .param("rendition", leg.rendition().name())
                .param("keptPercent", leg.keptPercent())
                .param("returnsAfterDays", leg.returnsAfterDays())
                .param("neededToClear", leg.neededToClear())
                .update();
        if (added == 0) {
            throw new Refusal("production.refused.leg-exists", leg.name());
        }
        changed(by, "leg.added", leg.name());
        return id;
    }

    /** @throws Refusal if somebody else changed or removed the leg meanwhile, or another leg has that name */
    @Transactional
    public void changeLeg(Membership by, Leg leg) {
        requirePlace(by, leg);
        try {
            int changed = jdbc.sql("""
                            update production_leg set name = :name, media_kind = :mediaKind, place_id = :placeId,
                                rendition = :rendition, kept_percent = :keptPercent, returns_after_days = :returnsAfterDays,
                                needed_to_clear = :neededToClear, version = version + 1
                            where production_id = :production and id = :id and version = :version
                            """)
                    .param("id", leg.id())
                    .param("production", by.productionId())
                    .param("name", leg.name())
                    .param("mediaKind", leg.mediaKind().name())
                    .param("placeId", leg.placeId())
                    .param("rendition", leg.rendition().name())
                    .param("keptPercent", leg.keptPercent())
                    .param("returnsAfterDays", leg.returnsAfterDays())
                    .param("neededToClear", leg.neededToClear())
                    .param("version", leg.version())
                    .update();
            if (changed == 0) {
                throw new Refusal("production.refused.changed-meanwhile");
            }
        } catch (DataIntegrityViolationException e) {
            throw new Refusal("production.refused.leg-exists", leg.name());
        }
        changed(by, "leg.changed", leg.name());
    }

    /** @throws Refusal if media or copies belong to the leg */
    @Transactional
    public void removeLeg(Membership by, UUID legId) {
        String name = leg(by.productionId(), legId).name();
        try {
            jdbc.sql("delete from production_leg where production_id = ? and id = ?")
                    .params(by.productionId(), legId)
                    .update();
        } catch (DataIntegrityViolationException e) {
            throw new Refusal("production.refused.leg-in-use", name);
        }
        changed(by, "leg.removed", name);
    }

    /**
     * Changes what clears a medium of a kind; the record says what held before and what holds now.
     *
     * @throws Refusal if somebody else changed the policy meanwhile
     */
    @Transactional
    public void changePolicy(Membership by, ClearingPolicy policy) {
        ClearingRules before = rules(by.productionId());
        int changed = jdbc.sql("""
                        update production_clearing_policy set proven_copies = :provenCopies, items = :items, media_kinds = :mediaKinds,
                            places = :places, off_site = :offSite, checked_within_days = :checkedWithinDays,
                            source_hash_needed = :sourceHashNeeded, round_trip_needed = :roundTripNeeded, version = version + 1
                        where production_id = :production and subject = :subject and version = :version
                        """)
                .param("production", by.productionId())
                .param("subject", policy.subject().name())
                .param("provenCopies", policy.provenCopies())
                .param("items", policy.items())
                .param("mediaKinds", policy.mediaKinds())
                .param("places", policy.places())
                .param("offSite", policy.offSite())
                .param("checkedWithinDays", policy.checkedWithinDays())
                .param("sourceHashNeeded", policy.sourceHashNeeded())
                .param("roundTripNeeded", policy.roundTripNeeded())
                .param("version", policy.version())
                .update();
        if (changed == 0) {
            throw new Refusal("production.refused.changed-meanwhile");
        }
        changed(by, "policy.changed", sentences.change(before, before.with(policy), policy.subject()));
    }

    private void requirePlace(Membership by, Leg leg) {
        boolean known = jdbc.sql("select exists (select 1 from production_place where production_id = ? and id = ?)")
                .params(by.productionId(), leg.placeId())
                .query(Boolean.class)
                .single();
        if (!known) {
            throw new NotFoundException();
        }
    }

    private void changed(Membership by, String action, String detail) {
        trail.add(by.act(action, "copy-plan", by.code(), detail));
        events.publishEvent(new CopyPlanChanged(by.productionId()));
    }
}

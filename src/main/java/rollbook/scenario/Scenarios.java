package rollbook.scenario;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.production.Membership;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;
import tools.jackson.databind.json.JsonMapper;

/** The scenarios of a production. */
@Service
class Scenarios {
    static final String NAME_TAKEN = "scenario.refused.name-taken";

    private static final String SCENARIOS = """
            select s.id, s.name, s.inputs, s.saved_at, p.display_name as saved_by, s.archived_at is not null as archived,
                   s.version
            from scenario_scenario s join people_person p on p.id = s.saved_by
            where s.production_id = :production
            """;
    private static final String SUBJECT = "scenario";
    private static final int MOST_COPIES = 99;

    private final JdbcClient jdbc;
    private final AuditTrail trail;
    private final Clock clock;

    Scenarios(JdbcClient jdbc, AuditTrail trail, Clock clock) {
        this.jdbc = jdbc;
        this.trail = trail;
        this.clock = clock;
    }

    /** All of them, the archived ones too, the latest saved first. */
    List<Scenario> list(UUID productionId) {
        return jdbc.sql(SCENARIOS + " order by s.saved_at desc, s.name")
                .param("production", productionId)
                .query(Scenarios::read)
                .list();
    }

    /** The one that was saved last and isn't archived. */
    Optional<Scenario> latest(UUID productionId) {
        return jdbc.sql(SCENARIOS + " and s.archived_at is null order by s.saved_at desc, s.name limit 1")
                .param("production", productionId)
                .query(Scenarios::read)
                .optional();
    }

    /** @throws NotFoundException if this production has no such scenario */
    Scenario get(UUID productionId, UUID id) {
        return jdbc.sql(SCENARIOS + " and s.id = :id")
                .param("production", productionId)
                .param("id", id)
                .query(Scenarios::read)
                .optional()
                .orElseThrow(NotFoundException::new);
    }

    private static Scenario read(ResultSet row, int number) throws SQLException {
        return new Scenario(
                row.getObject("id", UUID.class),
                row.getString("name"),
                JsonMapper.shared().readValue(row.getString("inputs"), ScenarioInputs.class),
                row.getTimestamp("saved_at").toInstant(),
                row.getString("saved_by"),
                row.getBoolean("archived"),
                row.getInt("version"));
    }

    /** @throws Refusal {@link #NAME_TAKEN} if another one that isn't archived has that name */
    @Transactional
    public UUID save(Membership by, String name, ScenarioInputs inputs) {
        UUID id = UUID.randomUUID();
        if (!insert(by, id, name, inputs)) {
            throw new Refusal(NAME_TAKEN, name);
        }
        trail.add(by.act("scenario.saved", SUBJECT, name, inputs.facts().date().toString()));
        return id;
    }

    private boolean insert(Membership by, UUID id, String name, ScenarioInputs inputs) {
        return jdbc.sql("""
                        insert into scenario_scenario (id, production_id, name, inputs, saved_at, saved_by)
                        values (:id, :production, :name, cast(:inputs as jsonb), :now, :person) on conflict do nothing
                        """)
                        .param("id", id)
                        .param("production", by.productionId())
                        .param("name", name)
                        .param("inputs", JsonMapper.shared().writeValueAsString(inputs))
                        .param("now", Timestamp.from(clock.instant()))
                        .param("person", by.personId())
                        .update()
                > 0;
    }

    /**
     * @param version that the person has seen
     * @throws Refusal if somebody else changed or archived it meanwhile, or {@link #NAME_TAKEN}
     */
    @Transactional
    public void change(Membership by, UUID id, String name, ScenarioInputs inputs, int version) {
        Scenario before = get(by.productionId(), id);
        int changed;
        try {
            changed = jdbc.sql("""
                            update scenario_scenario set name = :name, inputs = cast(:inputs as jsonb), saved_at = :now,
                                saved_by = :person, version = version + 1
                            where production_id = :production and id = :id and version = :version and archived_at is null
                            """)
                    .param("name", name)
                    .param("inputs", JsonMapper.shared().writeValueAsString(inputs))
                    .param("now", Timestamp.from(clock.instant()))
                    .param("person", by.personId())
                    .param("production", by.productionId())
                    .param("id", id)
                    .param("version", version)
                    .update();
        } catch (DuplicateKeyException taken) {
            throw new Refusal(NAME_TAKEN, name);
        }
        requireChanged(changed, before);
        trail.add(by.act("scenario.changed", SUBJECT, name, before.name().equals(name) ? "" : before.name()));
    }

    /** The same once more under a name of its own. */
    @Transactional
    public UUID copy(Membership by, UUID id) {
        Scenario original = get(by.productionId(), id);
        UUID copy = UUID.randomUUID();
        for (int number = 2; number <= MOST_COPIES; number++) {
            String name = original.name() + " (" + number + ")";
            if (insert(by, copy, name, original.inputs())) {
                trail.add(by.act("scenario.copied", SUBJECT, name, original.name()));
                return copy;
            }
        }
        throw new Refusal(NAME_TAKEN, original.name());
    }

    /**
     * @return its name
     * @throws Refusal if somebody else changed or archived it meanwhile
     */
    @Transactional
    public String archive(Membership by, UUID id, int version) {
        Scenario scenario = get(by.productionId(), id);
        int changed = jdbc.sql("""
                        update scenario_scenario set archived_at = ?, version = version + 1
                        where production_id = ? and id = ? and version = ? and archived_at is null
                        """)
                .params(Timestamp.from(clock.instant()), by.productionId(), id, version)
                .update();
        requireChanged(changed, scenario);
        trail.add(by.act("scenario.archived", SUBJECT, scenario.name(), ""));
        return scenario.name();
    }

    /**
     * @return its name
     * @throws Refusal if it isn't archived any more, or {@link #NAME_TAKEN}
     */
    @Transactional
    public String restore(Membership by, UUID id, int version) {
        Scenario scenario = get(by.productionId(), id);
        int changed;
        try {
            changed = jdbc.sql("""
                            update scenario_scenario set archived_at = null, version = version + 1
                            where production_id = ? and id = ? and version = ? and archived_at is not null
                            """).params(by.productionId(), id, version).update();
        } catch (DuplicateKeyException taken) {
            throw new Refusal(NAME_TAKEN, scenario.name());
        }
        requireChanged(changed, scenario);
        trail.add(by.act("scenario.restored", SUBJECT, scenario.name(), ""));
        return scenario.name();
    }

    private static void requireChanged(int changed, Scenario scenario) {
        if (changed == 0) {
            throw new Refusal("scenario.refused.changed-meanwhile", scenario.name());
        }
    }
}

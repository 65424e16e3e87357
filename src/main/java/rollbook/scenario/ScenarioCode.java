package rollbook.scenario;

import java.util.UUID;
import org.springframework.stereotype.Component;
import rollbook.production.CodeKind;

/** A kept scenario by its name. */
@Component
class ScenarioCode implements CodeKind {
    @Override
    public String rows() {
        return """
                select s.id, 'scenario.code' as what, s.name as code, '' as also, '' as detail, null::date as on_date,
                       case when s.archived_at is null then '' else 'scenario.code.archived' end as state,
                       s.archived_at is not null as past
                from scenario_scenario s where s.production_id = :production
                """;
    }

    @Override
    public String page(UUID id) {
        return "turnaround/scenarios/" + id;
    }
}

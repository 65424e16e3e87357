package rollbook.production;

import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** The places where a production keeps media. */
@Service
public class Places {
    private final JdbcClient jdbc;
    private final AuditTrail trail;
    private final ApplicationEventPublisher events;

    Places(JdbcClient jdbc, AuditTrail trail, ApplicationEventPublisher events) {
        this.jdbc = jdbc;
        this.trail = trail;
        this.events = events;
    }

    public List<Place> list(UUID productionId) {
        return jdbc.sql(
                        "select id, name, off_site, threat, version from production_place where production_id = ? order by position, name")
                .param(productionId)
                .query(Place.class)
                .list();
    }

    public Place get(UUID productionId, UUID placeId) {
        return jdbc.sql(
                        "select id, name, off_site, threat, version from production_place where production_id = ? and id = ?")
                .params(productionId, placeId)
                .query(Place.class)
                .optional()
                .orElseThrow(NotFoundException::new);
    }

    /** @throws Refusal if a place of that name exists */
    @Transactional
    public UUID add(Membership by, String name, boolean offSite, String threat) {
        UUID id = UUID.randomUUID();
        int added = jdbc.sql("""
                        insert into production_place (id, production_id, name, off_site, threat, position)
                        select :id, :production, :name, :offSite, :threat, coalesce(max(position), 0) + 1 from production_place where production_id = :production
                        on conflict do nothing
                        """)
                .param("id", id)
                .param("production", by.productionId())
                .param("name", name)
                .param("offSite", offSite)
                .param("threat", threat)
                .update();
        if (added == 0) {
            throw new Refusal("production.refused.place-exists", name);
        }
        trail.add(by.act("place.added", "place", name, detail(offSite, threat)));
        return id;
    }

    /** @throws Refusal if somebody else changed or removed the place meanwhile, or another place has that name */
    @Transactional
    public void change(Membership by, Place place) {
        try {
            int changed = jdbc.sql("""
                            update production_place set name = ?, off_site = ?, threat = ?, version = version + 1
                            where production_id = ? and id = ? and version = ?
                            """)
                    .params(
                            place.name(),
                            place.offSite(),
                            place.threat(),
                            by.productionId(),
                            place.id(),
                            place.version())
                    .update();
            if (changed == 0) {
                throw new Refusal("production.refused.changed-meanwhile");
            }
        } catch (DataIntegrityViolationException e) {
            throw new Refusal("production.refused.place-exists", place.name());
        }
        trail.add(by.act("place.changed", "place", place.name(), detail(place.offSite(), place.threat())));
        // What clears a card may depend on which places are off-site.
        events.publishEvent(new CopyPlanChanged(by.productionId()));
    }

    private static String detail(boolean offSite, String threat) {
        return Stream.of(offSite ? "off-site" : "", threat)
                .filter(word -> !word.isEmpty())
                .collect(Collectors.joining(", "));
    }

    /** @throws Refusal if media are or were there, or a leg of the copy plan names it */
    @Transactional
    public void remove(Membership by, UUID placeId) {
        String name = get(by.productionId(), placeId).name();
        try {
            jdbc.sql("delete from production_place where production_id = ? and id = ?")
                    .params(by.productionId(), placeId)
                    .update();
        } catch (DataIntegrityViolationException e) {
            throw new Refusal("production.refused.place-in-use", name);
        }
        trail.add(by.act("place.removed", "place", name, ""));
    }
}

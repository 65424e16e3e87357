package rollbook.production;

import java.util.List;
import java.util.UUID;
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

    Places(JdbcClient jdbc, AuditTrail trail) {
        this.jdbc = jdbc;
        this.trail = trail;
    }

    public List<Place> list(UUID productionId) {
        return jdbc.sql(
                        "select id, name, off_site from production_place where production_id = ? order by position, name")
                .param(productionId)
                .query(Place.class)
                .list();
    }

    public Place get(UUID productionId, UUID placeId) {
        return jdbc.sql("select id, name, off_site from production_place where production_id = ? and id = ?")
                .params(productionId, placeId)
                .query(Place.class)
                .optional()
                .orElseThrow(NotFoundException::new);
    }

    /** @throws Refusal if a place of that name exists */
    @Transactional
    public UUID add(Membership by, String name, boolean offSite) {
        UUID id = UUID.randomUUID();
        int added = jdbc.sql("""
                        insert into production_place (id, production_id, name, off_site, position)
                        select :id, :production, :name, :offSite, coalesce(max(position), 0) + 1 from production_place where production_id = :production
                        on conflict do nothing
                        """)
                .param("id", id)
                .param("production", by.productionId())
                .param("name", name)
                .param("offSite", offSite)
                .update();
        if (added == 0) {
            throw new Refusal("production.refused.place-exists", name);
        }
        trail.add(by.act("place.added", "place", name, offSite ? "off-site" : ""));
        return id;
    }

    @Transactional
    public void change(Membership by, UUID placeId, String name, boolean offSite) {
        int changed = jdbc.sql("update production_place set name = ?, off_site = ? where production_id = ? and id = ?")
                .params(name, offSite, by.productionId(), placeId)
                .update();
        if (changed == 0) {
            throw new NotFoundException();
        }
        trail.add(by.act("place.changed", "place", name, offSite ? "off-site" : ""));
    }

    /** @throws Refusal if media are or were there, or a leg of the copy plan names it */
    @Transactional
    public void remove(Membership by, UUID placeId) {
        try {
            int removed = jdbc.sql("delete from production_place where production_id = ? and id = ?")
                    .params(by.productionId(), placeId)
                    .update();
            if (removed > 0) {
                trail.add(by.act("place.removed", "place", placeId.toString(), ""));
            }
        } catch (DataIntegrityViolationException e) {
            throw new Refusal("production.refused.place-in-use");
        }
    }
}

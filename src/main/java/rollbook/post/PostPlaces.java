package rollbook.post;

import java.time.ZoneId;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.production.Membership;
import rollbook.production.Place;
import rollbook.production.Places;
import rollbook.web.Refusal;

/** Which of its places a production calls post. */
@Service
public class PostPlaces {
    private final JdbcClient jdbc;
    private final Places places;
    private final AuditTrail trail;

    PostPlaces(JdbcClient jdbc, Places places, AuditTrail trail) {
        this.jdbc = jdbc;
        this.places = places;
        this.trail = trail;
    }

    Optional<PostPlace> get(UUID productionId) {
        return jdbc.sql("""
                        select s.place_id, p.name, pr.time_zone, s.version
                        from post_place s
                        join production_place p on p.id = s.place_id
                        join production_production pr on pr.id = s.production_id
                        where s.production_id = ?
                        """)
                .param(productionId)
                .query((row, number) -> new PostPlace(
                        row.getObject("place_id", UUID.class),
                        row.getString("name"),
                        ZoneId.of(row.getString("time_zone")),
                        row.getInt("version")))
                .optional();
    }

    /**
     * @param version of the choice that the person saw
     * @throws Refusal if somebody else chose meanwhile
     */
    @Transactional
    public void choose(Membership by, UUID placeId, int version) {
        Place place = places.get(by.productionId(), placeId);
        int changed = jdbc.sql("""
                        insert into post_place as old (production_id, place_id, version)
                        select :production, :place, :version + 1
                        where :version = 0 or exists (select 1 from post_place where production_id = :production)
                        on conflict (production_id) do update set place_id = excluded.place_id, version = excluded.version
                        where old.version = :version
                        """)
                .param("production", by.productionId())
                .param("place", placeId)
                .param("version", version)
                .update();
        if (changed == 0) {
            throw new Refusal("post.refused.place-changed");
        }
        trail.add(by.act("post.chosen", "place", place.name(), ""));
    }
}

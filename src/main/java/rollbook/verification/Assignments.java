package rollbook.verification;

import com.github.kagkarlsson.scheduler.SchedulerClient;
import java.sql.Timestamp;
import java.time.Clock;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.offload.Copies;
import rollbook.offload.Copy;
import rollbook.offload.Rolls;
import rollbook.production.CopyPlan;
import rollbook.production.Leg;
import rollbook.production.Membership;
import rollbook.production.Rendition;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** What the parts of documents describe, as people said it; corrections are further entries. */
@Service
class Assignments {
    private final JdbcClient jdbc;
    private final Rolls rolls;
    private final Copies copies;
    private final MediaItems items;
    private final CopyPlan plan;
    private final SchedulerClient jobs;
    private final AuditTrail trail;
    private final Clock clock;

    Assignments(
            JdbcClient jdbc,
            Rolls rolls,
            Copies copies,
            MediaItems items,
            CopyPlan plan,
            SchedulerClient jobs,
            AuditTrail trail,
            Clock clock) {
        this.jdbc = jdbc;
        this.rolls = rolls;
        this.copies = copies;
        this.items = items;
        this.plan = plan;
        this.jobs = jobs;
        this.trail = trail;
        this.clock = clock;
    }

    List<Part> parts(UUID productionId, UUID documentId) {
        return jdbc.sql("""
                        select p.id, p.document_id, p.folder, p.entries, p.size_bytes, p.guess_roll_id, r.code as guess_roll_code,
                               p.guess_subject, p.guess_item_id
                        from verification_part p left join offload_roll r on r.id = p.guess_roll_id
                        where p.production_id = ? and p.document_id = ? order by p.position
                        """).params(productionId, documentId).query(Part.class).list();
    }

    /** All assignments of a document's parts, corrected ones too, oldest first. */
    List<Assignment> ofDocument(UUID productionId, UUID documentId) {
        return jdbc.sql("""
                        select a.id, a.part_id, a.subject, a.roll_id, r.code as roll_code, a.copy_id, i.code as item_code,
                               a.assigned_at, e.display_name as assigned_by_name, a.note,
                               exists (select 1 from verification_assignment later where later.replaces = a.id) as replaced
                        from verification_assignment a
                        join verification_part p on p.id = a.part_id
                        join people_person e on e.id = a.assigned_by
                        left join offload_roll r on r.id = a.roll_id
                        left join offload_copy c on c.id = a.copy_id
                        left join inventory_item i on i.id = c.item_id
                        where a.production_id = ? and p.document_id = ? order by a.id
                        """)
                .params(productionId, documentId)
                .query(Assignment.class)
                .list();
    }

    /** All that was said to describe a roll, corrected or not, in the order in which it was said. */
    List<RollDocument> ofRoll(UUID productionId, UUID rollId) {
        return jdbc.sql("""
                        select a.part_id, p.document_id, d.file_name, d.uploaded_at, sender.display_name as uploaded_by_name,
                               a.subject, a.copy_id, i.code as item_code, a.assigned_at as said_at,
                               sayer.display_name as said_by_name, later.assigned_at as corrected_at,
                               corrector.display_name as corrected_by_name, later.note as corrected_because
                        from verification_assignment a
                        join verification_part p on p.id = a.part_id
                        join verification_document d on d.id = p.document_id
                        join people_person sender on sender.id = d.uploaded_by
                        join people_person sayer on sayer.id = a.assigned_by
                        left join offload_copy c on c.id = a.copy_id
                        left join inventory_item i on i.id = c.item_id
                        left join verification_assignment later on later.replaces = a.id
                        left join people_person corrector on corrector.id = later.assigned_by
                        where a.production_id = ? and a.roll_id = ? order by a.id
                        """)
                .params(productionId, rollId)
                .query(RollDocument.class)
                .list();
    }

    /** What a person says of a part. {@code replaces} null adds; otherwise it corrects that earlier assignment. */
    record Statement(
            Subject subject,
            @Nullable UUID rollId,
            @Nullable UUID itemId,
            @Nullable Long replaces,
            String note) {}

    /**
     * Says what a part describes, and orders the judging of the rolls that this touches.
     *
     * @param newestSeen the part's newest assignment that the person saw, or null if there was none
     * @throws Refusal if somebody else has assigned the part meanwhile, or it describes that already
     * @throws NotFoundException if what is named isn't of this production, or what is corrected isn't of this part
     */
    @Transactional
    public void assign(Membership by, UUID partId, Statement statement, @Nullable Long newestSeen) {
        UUID production = by.productionId();
        String documentName = lockPart(production, partId);
        Long newest = jdbc.sql("select max(id) from verification_assignment where part_id = ?")
                .param(partId)
                .query(Long.class)
                .optional()
                .orElse(null);
        if (!Objects.equals(newest, newestSeen)) {
            throw new Refusal("verification.refused.assigned-meanwhile", documentName);
        }
        Optional<UUID> touchedBefore =
                statement.replaces() == null ? Optional.empty() : corrected(partId, statement.replaces());
        refuseRepetition(partId, documentName, statement);
        insert(production, by.personId(), partId, statement);
        touchedBefore
                .filter(roll -> !roll.equals(statement.rollId()))
                .ifPresent(roll -> RollJudging.order(jobs, clock, production, roll));
        trail.add(by.act(
                "document.assigned",
                "document",
                documentName,
                statement.subject().name()));
    }

    /** The roll that a part's earlier assignment named, if any. */
    private Optional<UUID> corrected(UUID partId, long assignment) {
        List<UUID> rollIds = jdbc.sql("select roll_id from verification_assignment where id = ? and part_id = ?")
                .params(assignment, partId)
                .query((row, number) -> row.getObject("roll_id", UUID.class))
                .list();
        if (rollIds.isEmpty()) {
            throw new NotFoundException();
        }
        return Optional.ofNullable(rollIds.get(0));
    }

    private void refuseRepetition(UUID partId, String documentName, Statement statement) {
        boolean known = jdbc.sql("""
                        select exists (
                            select 1 from verification_assignment a left join offload_copy c on c.id = a.copy_id
                            where a.part_id = ? and a.subject = ? and a.roll_id is not distinct from ?::uuid
                              and c.item_id is not distinct from ?::uuid
                              and not exists (select 1 from verification_assignment later where later.replaces = a.id))
                        """)
                .param(partId)
                .param(statement.subject().name())
                .param(statement.subject() == Subject.NOT_A_ROLL ? null : statement.rollId())
                .param(statement.subject() == Subject.COPY ? statement.itemId() : null)
                .query(Boolean.class)
                .single();
        if (known) {
            throw new Refusal("verification.refused.described-already", documentName);
        }
    }

    /** Assigns a part as the uploader said when sending the document; only if nobody has assigned it yet. */
    @Transactional(propagation = Propagation.MANDATORY)
    void assignAsSaid(
            UUID productionId, UUID personId, UUID partId, Subject subject, UUID rollId, @Nullable UUID itemId) {
        insert(productionId, personId, partId, new Statement(subject, rollId, itemId, null, ""));
    }

    private String lockPart(UUID productionId, UUID partId) {
        return jdbc.sql("""
                        select d.file_name from verification_part p join verification_document d on d.id = p.document_id
                        where p.production_id = ? and p.id = ? for update of p
                        """)
                .params(productionId, partId)
                .query(String.class)
                .optional()
                .orElseThrow(NotFoundException::new);
    }

    private void insert(UUID productionId, UUID personId, UUID partId, Statement statement) {
        UUID rollId = statement.subject() == Subject.NOT_A_ROLL ? null : required(statement.rollId());
        UUID copyId = null;
        if (rollId != null) {
            rolls.get(productionId, rollId);
            copyId = statement.subject() == Subject.COPY
                    ? copyOn(productionId, rollId, required(statement.itemId()))
                    : null;
        }
        int added = jdbc.sql("""
                        insert into verification_assignment (production_id, part_id, subject, roll_id, copy_id, assigned_at,
                            assigned_by, replaces, note)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?) on conflict do nothing
                        """)
                .param(productionId)
                .param(partId)
                .param(statement.subject().name())
                .param(rollId)
                .param(copyId)
                .param(Timestamp.from(clock.instant()))
                .param(personId)
                .param(statement.replaces())
                .param(statement.note())
                .update();
        if (added == 0) {
            throw new Refusal("verification.refused.corrected-already");
        }
        if (rollId != null) {
            if (statement.subject() == Subject.CARD) {
                measure(productionId, partId, rollId);
            }
            RollJudging.order(jobs, clock, productionId, rollId);
        }
    }

    /** The copy of the roll on that medium, in the rendition that its leg asks for if no copy is logged yet. */
    private UUID copyOn(UUID productionId, UUID rollId, UUID itemId) {
        List<Copy> there = copies.ofRoll(productionId, rollId).stream()
                .filter(copy -> copy.itemId().equals(itemId))
                .toList();
        if (there.size() == 1) {
            return there.get(0).id();
        }
        MediaItem item = items.get(productionId, itemId);
        Rendition rendition = plan.legs(productionId).stream()
                .filter(leg -> leg.id().equals(item.legId()))
                .map(Leg::rendition)
                .findFirst()
                .orElse(Rendition.AS_RECORDED);
        return copies.findOrAdd(productionId, rollId, itemId, rendition);
    }

    /** A manifest of the card knows the roll's size best, if it gives sizes at all. */
    private void measure(UUID productionId, UUID partId, UUID rollId) {
        jdbc.sql("select size_bytes from verification_part where id = ?")
                .param(partId)
                .query(Long.class)
                .optional()
                .filter(size -> size > 0)
                .ifPresent(size -> rolls.measured(productionId, rollId, size));
    }

    private static UUID required(@Nullable UUID id) {
        if (id == null) {
            throw new NotFoundException();
        }
        return id;
    }
}

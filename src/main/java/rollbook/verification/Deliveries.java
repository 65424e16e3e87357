package rollbook.verification;

import java.io.IOException;
import java.io.InputStream;
import java.sql.Timestamp;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.web.multipart.MultipartFile;
import rollbook.production.Membership;
import rollbook.web.NotFoundException;

/** Files that people send, and what they are told of each. */
@Service
class Deliveries {
    private final JdbcClient jdbc;
    private final Documents documents;
    private final Clock clock;

    Deliveries(JdbcClient jdbc, Documents documents, Clock clock) {
        this.jdbc = jdbc;
        this.documents = documents;
        this.clock = clock;
    }

    /**
     * Keeps each file in a transaction of its own, so that one that fails takes nothing back of those before it.
     *
     * @param together an earlier delivery of the same person that these files belong to, or null
     * @return the delivery that now tells what became of them
     */
    UUID receive(Membership by, @Nullable UUID together, List<MultipartFile> files, Described said) throws IOException {
        UUID delivery = together != null && isOwn(by, together) ? together : UUID.randomUUID();
        for (MultipartFile file : files) {
            receive(by, delivery, file, said);
        }
        return delivery;
    }

    private void receive(Membership by, UUID delivery, MultipartFile file, Described said) throws IOException {
        String sentName = file.getOriginalFilename() == null ? "" : file.getOriginalFilename();
        if (file.isEmpty()) {
            note(by, delivery, sentName, said, DeliveredFile.Outcome.EMPTY, null);
            return;
        }
        try (InputStream in = file.getInputStream()) {
            keep(by, delivery, sentName, in, said);
        } catch (Documents.AlreadyHere here) {
            here(by, delivery, sentName, said, here);
        }
    }

    /**
     * Keeps one file, as a part of that delivery.
     *
     * @throws Documents.AlreadyHere if it was here, of which {@link #here} tells the sender
     */
    void keep(Membership by, UUID delivery, String sentName, InputStream in, Described said) throws IOException {
        Documents.Receipt receipt =
                documents.store(by, DocumentName.shown(sentName), in, said.subject(), said.itemId());
        note(by, delivery, sentName, said, DeliveredFile.Outcome.STORED, receipt.documentId());
    }

    void here(Membership by, UUID delivery, String sentName, Described said, Documents.AlreadyHere here) {
        note(
                by,
                delivery,
                sentName,
                said,
                DeliveredFile.Outcome.HERE,
                here.receipt().documentId());
    }

    private void note(
            Membership by,
            UUID delivery,
            String sentName,
            Described said,
            DeliveredFile.Outcome outcome,
            @Nullable UUID documentId) {
        jdbc.sql("""
                        insert into verification_delivery (delivery_id, production_id, sent_at, sent_by, sent_name, said_subject,
                            said_item_id, outcome, document_id)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?)
                        """)
                .param(delivery)
                .param(by.productionId())
                .param(Timestamp.from(clock.instant()))
                .param(by.personId())
                .param(DocumentName.exact(sentName))
                .param(said.subject() == null ? null : said.subject().name())
                .param(said.itemId())
                .param(outcome.name())
                .param(documentId)
                .update();
    }

    /** Whether this person sent something under that number before. */
    boolean isOwn(Membership by, UUID delivery) {
        return jdbc.sql(
                        "select exists (select 1 from verification_delivery where production_id = ? and delivery_id = ? and sent_by = ?)")
                .params(by.productionId(), delivery, by.personId())
                .query(Boolean.class)
                .single();
    }

    /** @throws NotFoundException if nothing was sent under that number in this production */
    List<DeliveredFile> get(UUID productionId, UUID delivery) {
        List<DeliveredFile> files = jdbc.sql("""
                        select f.sent_name, f.sent_at, f.said_subject, i.code as said_item_code, f.outcome, f.document_id,
                               d.file_name, left(encode(d.sha256, 'hex'), 12) as short_sha256, d.uploaded_at,
                               e.display_name as uploaded_by_name, r.state,
                               (select count(*) from verification_part p
                                where (p.document_id = d.id or p.document_id in (
                                         select m.member_id from verification_archive_member m where m.archive_id = d.id))
                                  and not exists (select 1 from verification_assignment a where a.part_id = p.id)) as unassigned,
                               (select count(*) from verification_archive_member m where m.archive_id = d.id) as members,
                               (select count(*) from verification_archive_member m
                                where m.archive_id = d.id and m.state <> 'GOOD') as doubted,
                               (select count(*) from verification_archive_member m
                                join verification_reading mr on mr.document_id = m.member_id
                                where m.archive_id = d.id and mr.state in ('WAITING', 'READING')) as members_waiting,
                               f.said_subject is null
                                 or (d.said_subject is not distinct from f.said_subject
                                     and d.said_item_id is not distinct from f.said_item_id
                                     and not exists (
                                       select 1 from verification_part p join verification_assignment a on a.part_id = p.id
                                       where p.document_id = d.id and a.replaces is not null))
                                 or exists (
                                   select 1 from verification_part p
                                   join verification_assignment a on a.part_id = p.id
                                   left join offload_copy c on c.id = a.copy_id
                                   where p.document_id = d.id and a.subject = f.said_subject
                                     and c.item_id is not distinct from f.said_item_id
                                     and not exists (select 1 from verification_assignment later where later.replaces = a.id))
                                 as known_so
                        from verification_delivery f
                        left join verification_document d on d.id = f.document_id
                        left join verification_reading r on r.document_id = d.id
                        left join people_person e on e.id = d.uploaded_by
                        left join inventory_item i on i.id = f.said_item_id
                        where f.production_id = ? and f.delivery_id = ? order by f.id
                        """)
                .params(productionId, delivery)
                .query(DeliveredFile.class)
                .list();
        if (files.isEmpty()) {
            throw new NotFoundException();
        }
        return files;
    }
}

package rollbook.verification;

import java.io.IOException;
import java.io.InputStream;
import java.sql.Timestamp;
import java.sql.Types;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.core.support.SqlBinaryValue;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.util.unit.DataSize;
import rollbook.production.Membership;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/**
 * Files that arrive in parts. The parts are kept in the database, where every instance sees them; a file becomes a document in
 * one transaction, once its last part is here. Nothing of this is on record before that.
 */
@Service
class Uploads {
    /** The largest part: a fast line needs few requests, and one of them costs little memory. */
    static final int MOST_PART_BYTES = 8 << 20;

    private static final int LONGEST_NAME = 500;
    /** How many of the largest files a person may leave unfinished in a production. It keeps the disk, not the books. */
    private static final int MOST_UNFINISHED = 2;

    private static final String UPLOADS = """
            select u.id, u.sent_name, u.size_bytes, u.said_subject, u.said_item_id, i.code as said_item_code, u.delivery_id,
                   u.last_part_at, u.completed_at is not null as complete,
                   case when u.completed_at is not null then u.size_bytes else coalesce(
                     (select sum(p.size_bytes) from verification_upload_part p where p.upload_id = u.id), 0)::bigint end as kept_bytes
            from verification_upload u left join inventory_item i on i.id = u.said_item_id
            where u.production_id = :production and u.sent_by = :person
            """;

    private final JdbcClient jdbc;
    private final Documents documents;
    private final Deliveries deliveries;
    private final Clock clock;
    private final long mostBytes;

    Uploads(
            JdbcClient jdbc,
            Documents documents,
            Deliveries deliveries,
            Clock clock,
            @Value("${spring.servlet.multipart.max-file-size}") DataSize mostBytes) {
        this.jdbc = jdbc;
        this.documents = documents;
        this.deliveries = deliveries;
        this.clock = clock;
        this.mostBytes = mostBytes.toBytes();
    }

    /** The largest file, in bytes. */
    long mostBytes() {
        return mostBytes;
    }

    /** A file as its sender announces it; {@code beginning} is the SHA-256 of its first bytes. */
    record Announced(String name, long sizeBytes, byte[] beginning) {}

    /**
     * Begins an upload, or finds the one that the same person began of the same file for the same purpose.
     *
     * @param together an earlier delivery of the same person that the file belongs to, or null
     * @throws NotFoundException if it is said to describe what holds no copies
     * @throws Refusal if the person has too much unfinished
     */
    @Transactional
    public Upload begin(Membership by, Announced file, Described said, @Nullable UUID together) {
        documents.checkMedium(by.productionId(), said.itemId());
        UUID own = together != null && deliveries.isOwn(by, together) ? together : null;
        UUID id = jdbc.sql("""
                        insert into verification_upload (id, production_id, sent_by, sent_name, size_bytes, beginning, said_subject,
                            said_item_id, delivery_id, last_part_at)
                        values (:id, :production, :person, :name, :size, :beginning, :subject, :item, :delivery, :now)
                        on conflict (production_id, sent_by, sent_name, size_bytes, beginning, said_subject, said_item_id)
                            where completed_at is null
                        do update set delivery_id = coalesce(:own, verification_upload.delivery_id)
                        returning id
                        """)
                .param("id", UUID.randomUUID())
                .param("production", by.productionId())
                .param("person", by.personId())
                .param("name", name(file.name()))
                .param("size", file.sizeBytes())
                .param("beginning", file.beginning())
                .param("subject", said.subject() == null ? null : said.subject().name())
                .param("item", said.itemId())
                .param("delivery", own == null ? UUID.randomUUID() : own)
                .param("own", own, Types.OTHER)
                .param("now", Timestamp.from(clock.instant()))
                .query(UUID.class)
                .single();
        List<Upload> unfinished = unfinished(by);
        if (unfinished.stream().mapToLong(Upload::sizeBytes).sum() > MOST_UNFINISHED * mostBytes) {
            throw new Refusal("verification.uploads.too-much");
        }
        return unfinished.stream()
                .filter(one -> one.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    /** What the database can keep of it. */
    private static String name(String sent) {
        StringBuilder name = new StringBuilder();
        sent.codePoints().filter(letter -> letter != 0).limit(LONGEST_NAME).forEach(name::appendCodePoint);
        return name.toString();
    }

    /** What this person has begun and not finished here, the oldest first. */
    List<Upload> unfinished(Membership by) {
        return jdbc.sql(UPLOADS + " and u.completed_at is null order by u.last_part_at, u.id")
                .param("production", by.productionId())
                .param("person", by.personId())
                .query(Upload.class)
                .list();
    }

    /** @throws NotFoundException if this person has no such upload in this production */
    Upload get(Membership by, UUID id) {
        return find(by, id).orElseThrow(NotFoundException::new);
    }

    List<Upload.Part> parts(UUID id) {
        return jdbc.sql("""
                        select start_byte, size_bytes, encode(sha256, 'hex') as sha256
                        from verification_upload_part where upload_id = ? order by start_byte
                        """).param(id).query(Upload.Part.class).list();
    }

    private Optional<Upload> find(Membership by, UUID id) {
        return jdbc.sql(UPLOADS + " and u.id = :id")
                .param("production", by.productionId())
                .param("person", by.personId())
                .param("id", id)
                .query(Upload.class)
                .optional();
    }

    /**
     * Held until the end of the transaction; empty if another request holds it. It is read only then: parts that were kept
     * meanwhile would be missed otherwise.
     */
    Optional<Upload> hold(Membership by, UUID id) {
        return jdbc.sql("select id from verification_upload where id = ? for update skip locked")
                .param(id)
                .query(UUID.class)
                .optional()
                .flatMap(held -> find(by, held));
    }

    /** Keeps a part if it begins where the kept ones end and is what its digest says. When this returns KEPT, it is safe. */
    @Transactional(rollbackFor = Exception.class)
    public Upload.Outcome append(Membership by, UUID id, long startByte, ArrivedPart part, byte @Nullable [] saidSha256)
            throws IOException {
        Upload upload = hold(by, id).orElse(null);
        if (upload == null) {
            return Upload.Outcome.BUSY;
        }
        if (upload.complete() || startByte != upload.keptBytes()) {
            return upload.complete() ? Upload.Outcome.COMPLETE : Upload.Outcome.ELSEWHERE;
        }
        if (!part.is(saidSha256)) {
            return Upload.Outcome.DAMAGED;
        }
        if (startByte + part.sizeBytes() > upload.sizeBytes()) {
            discard(by, id);
            return Upload.Outcome.TOO_LONG;
        }
        if (part.sizeBytes() > 0) {
            add(id, startByte, part);
        }
        return Upload.Outcome.KEPT;
    }

    private void add(UUID id, long startByte, ArrivedPart part) throws IOException {
        try (InputStream in = part.open()) {
            jdbc.sql(
                            "insert into verification_upload_part (upload_id, start_byte, size_bytes, sha256, content) values (?, ?, ?, ?, ?)")
                    .param(id)
                    .param(startByte)
                    .param(part.sizeBytes())
                    .param(part.sha256())
                    .param(new SqlBinaryValue(in, part.sizeBytes()))
                    .update();
        }
        jdbc.sql("update verification_upload set last_part_at = ? where id = ?")
                .params(Timestamp.from(clock.instant()), id)
                .update();
    }

    /** Notes that an upload has become a document, and lets go of its parts. The caller holds it. */
    void completed(UUID id) {
        jdbc.sql("update verification_upload set completed_at = ? where id = ?")
                .params(Timestamp.from(clock.instant()), id)
                .update();
        jdbc.sql("delete from verification_upload_part where upload_id = ?")
                .param(id)
                .update();
    }

    byte[] content(UUID id, long startByte) {
        return jdbc.sql("select content from verification_upload_part where upload_id = ? and start_byte = ?")
                .params(id, startByte)
                .query(byte[].class)
                .single();
    }

    /** @throws NotFoundException if this person has no such upload in this production */
    @Transactional
    public void discard(Membership by, UUID id) {
        int gone = jdbc.sql("delete from verification_upload where production_id = ? and sent_by = ? and id = ?")
                .params(by.productionId(), by.personId(), id)
                .update();
        if (gone == 0) {
            throw new NotFoundException();
        }
    }

    /** Forgets those of which no part has come for long, finished or not. */
    int forgetOld(Instant now) {
        return jdbc.sql("delete from verification_upload where last_part_at < ?")
                .param(Timestamp.from(now.minus(Upload.KEPT)))
                .update();
    }
}

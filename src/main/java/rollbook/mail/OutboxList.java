package rollbook.mail;

import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import rollbook.web.Listing;
import rollbook.web.Paged;

/** A production's messages, filtered and page by page. */
@Repository
class OutboxList {
    /** What is filtered by as if it were a state: what somebody may have to see to. */
    static final String TROUBLE = "TROUBLE";

    private final JdbcClient jdbc;

    OutboxList(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** What the list may be sorted by. */
    enum Column {
        WRITTEN("m.created_at"),
        TO("lower(e.display_name)"),
        SUBJECT("lower(m.subject)"),
        STATE("m.state");

        private final String sql;

        Column(String sql) {
            this.sql = sql;
        }
    }

    /**
     * Which messages somebody looks for.
     *
     * @param state of {@link State}, {@link #TROUBLE}, or empty for all
     * @param kind of {@link Kind}, empty for all
     * @param text found in the subject or the person's name; empty for all
     */
    record Wanted(String state, String kind, String text, Listing.Order<Column> order) {}

    record Counts(long all, long trouble, long waiting) {}

    Counts counts(UUID productionId) {
        return jdbc.sql("select count(*) as all, count(*) filter (where " + Outbox.TROUBLE
                        + ") as trouble, count(*) filter (where m.state = 'WAITING') as waiting"
                        + " from mail_message m where m.production_id = ?")
                .param(productionId)
                .query(Counts.class)
                .single();
    }

    Paged<Message> page(UUID productionId, Wanted wanted, int asked) {
        String where = """
                 where m.production_id = :production
                   and (:state = '' or m.state = :state or :state = 'TROUBLE' and %s)
                   and (:kind = '' or m.kind = :kind)
                   and (:text = '' or position(lower(:text) in lower(m.subject || ' ' || e.display_name)) > 0)
                """.formatted(Outbox.TROUBLE);
        long total = with(
                        "select count(*) from mail_message m join people_person e on e.id = m.person_id" + where,
                        productionId,
                        wanted)
                .query(Long.class)
                .single();
        int number = Paged.shown(asked, total);
        List<Message> rows = with(
                        Outbox.MESSAGES + where + " order by " + wanted.order().column().sql
                                + wanted.order().direction()
                                + ", m.created_at desc, m.id offset :offset limit :limit",
                        productionId,
                        wanted)
                .param("offset", Paged.offset(number, Paged.SIZE))
                .param("limit", Paged.SIZE)
                .query(Message.class)
                .list();
        return new Paged<>(rows, number, Paged.SIZE, total);
    }

    /** Those of the ids that this production has. */
    List<Message> ofIds(UUID productionId, Collection<UUID> ids) {
        return jdbc.sql(Outbox.MESSAGES
                        + " where m.production_id = :production and m.id = any (:ids) order by m.created_at desc, m.id")
                .param("production", productionId)
                .param("ids", ids.toArray(UUID[]::new))
                .query(Message.class)
                .list();
    }

    private JdbcClient.StatementSpec with(String sql, UUID productionId, Wanted wanted) {
        return jdbc.sql(sql)
                .param("production", productionId)
                .param("state", wanted.state())
                .param("kind", wanted.kind())
                .param("text", wanted.text());
    }
}

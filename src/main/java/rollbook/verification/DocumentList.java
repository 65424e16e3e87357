package rollbook.verification;

import java.sql.Timestamp;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import rollbook.web.Listing;
import rollbook.web.Paged;

/** The documents of a production in the order in which people have to deal with them. */
@Repository
class DocumentList {
    /** How long a rejected document is news. */
    private static final Duration NEWS = Duration.ofDays(2);

    private final JdbcClient jdbc;
    private final Clock clock;

    DocumentList(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /**
     * How many documents stand where.
     *
     * @param rejectedLately of the rejected ones, those of the last two days
     */
    record Counts(long waitingForPeople, long beingRead, long assigned, long rejected, long rejectedLately) {
        public long all() {
            return waitingForPeople + beingRead + assigned + rejected;
        }

        public long of(Document.@Nullable Standing standing) {
            if (standing == null) {
                return all();
            }
            return switch (standing) {
                case WAITS_FOR_PEOPLE -> waitingForPeople;
                case BEING_READ -> beingRead;
                case ASSIGNED -> assigned;
                case REJECTED -> rejected;
            };
        }
    }

    Counts counts(UUID productionId) {
        return jdbc.sql("select"
                        + " count(*) filter (where " + where(Document.Standing.WAITS_FOR_PEOPLE)
                        + ") as waiting_for_people,"
                        + " count(*) filter (where " + where(Document.Standing.BEING_READ) + ") as being_read,"
                        + " count(*) filter (where " + where(Document.Standing.ASSIGNED) + ") as assigned,"
                        + " count(*) filter (where " + where(Document.Standing.REJECTED) + ") as rejected,"
                        + " count(*) filter (where " + where(Document.Standing.REJECTED)
                        + " and ended_at > :lately) as rejected_lately"
                        + " from (" + Documents.DOCUMENTS + ") documents")
                .param("production", productionId)
                .param("lately", Timestamp.from(clock.instant().minus(NEWS)))
                .query(Counts.class)
                .single();
    }

    /** What the list may be sorted by. */
    enum Column {
        /** Those that wait for people first, then the newest. */
        STATE("unassigned > 0 desc, uploaded_at desc", "unassigned > 0 asc, uploaded_at asc"),
        DOCUMENT("lower(file_name)", "lower(file_name) desc"),
        FILES("entries", "entries desc"),
        SIZE("size_bytes", "size_bytes desc"),
        SENT("uploaded_at", "uploaded_at desc");

        static final Listing.Order<Column> USUAL = new Listing.Order<>(STATE, false);

        private final String ascending;
        private final String descending;

        Column(String ascending, String descending) {
            this.ascending = ascending;
            this.descending = descending;
        }
    }

    /**
     * Which documents somebody looks for.
     *
     * @param text found in the file's name or who sent it; empty for all
     */
    record Wanted(Document.@Nullable Standing standing, String text, Listing.Order<Column> order) {}

    Paged<Document> page(UUID productionId, Wanted wanted, int asked, Counts counts) {
        String where = (wanted.standing() == null ? " where true" : " where " + where(wanted.standing()))
                + " and (:text = '' or position(lower(:text) in lower(file_name || ' ' || uploaded_by_name)) > 0)";
        long total = wanted.text().isEmpty()
                ? counts.of(wanted.standing())
                : jdbc.sql("select count(*) from (" + Documents.DOCUMENTS + ") documents" + where)
                        .param("production", productionId)
                        .param("text", wanted.text())
                        .query(Long.class)
                        .single();
        int number = Paged.shown(asked, total);
        Column column = wanted.order().column();
        List<Document> rows = jdbc.sql("select * from (" + Documents.DOCUMENTS + ") documents" + where + " order by "
                        + (wanted.order().descending() ? column.descending : column.ascending)
                        + ", uploaded_at desc, sequence, id limit :limit offset :offset")
                .param("production", productionId)
                .param("text", wanted.text())
                .param("limit", Paged.SIZE)
                .param("offset", Paged.offset(number, Paged.SIZE))
                .query(Documents::document)
                .list();
        return new Paged<>(rows, number, Paged.SIZE, total);
    }

    /** What {@link Document#standing()} says, for the database. */
    private static String where(Document.Standing standing) {
        return switch (standing) {
            case WAITS_FOR_PEOPLE -> "state = 'READ' and unassigned > 0";
            case BEING_READ -> "state in ('WAITING', 'READING')";
            case ASSIGNED -> "state = 'READ' and unassigned = 0";
            case REJECTED -> "state = 'REJECTED'";
        };
    }
}

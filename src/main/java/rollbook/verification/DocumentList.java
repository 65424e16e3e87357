package rollbook.verification;

import java.sql.Timestamp;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
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

    /** Those that wait for people first, then the newest. */
    Paged<Document> page(UUID productionId, Document.@Nullable Standing standing, int number, Counts counts) {
        String wanted = standing == null ? "" : " where " + where(standing);
        List<Document> rows = jdbc.sql("select * from (" + Documents.DOCUMENTS + ") documents" + wanted
                        + " order by unassigned > 0 desc, uploaded_at desc, sequence, id limit :limit offset :offset")
                .param("production", productionId)
                .param("limit", Paged.SIZE)
                .param("offset", Paged.offset(number, Paged.SIZE))
                .query(Documents::document)
                .list();
        return new Paged<>(rows, Math.max(1, number), Paged.SIZE, counts.of(standing));
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

package rollbook.offload;

import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import rollbook.web.Listing;
import rollbook.web.Paged;

/** The sessions that have ended, filtered and page by page. */
@Repository
class EndedOffloads {
    /** Each has many figures, which on a phone stand one below the other. */
    private static final int SIZE = 20;

    private static final String ENDED = " from (" + Offloads.SESSIONS + """
            ) s where s.outcome <> 'RUNNING' and (:outcome = '' or s.outcome = :outcome)
              and (:text = '' or position(lower(:text) in lower(concat_ws(' ',
                   s.roll_code, s.card_code, s.reader_code, s.adapter_code, s.destinations))) > 0)
            """;

    private final JdbcClient jdbc;

    EndedOffloads(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** What the list may be sorted by. */
    enum Column {
        ROLL("upper(s.roll_code)"),
        STATE("s.outcome"),
        ENDED("s.ended_at"),
        BYTES("s.size_bytes");

        private final String sql;

        Column(String sql) {
            this.sql = sql;
        }
    }

    /**
     * @param outcome of {@link Offload.Outcome}, empty for both
     * @param text found in the code of a roll or of what was used; empty for all
     */
    record Wanted(String outcome, String text, Listing.Order<Column> order) {
        static final Wanted ALL = new Wanted("", "", new Listing.Order<>(Column.ENDED, true));
    }

    long count(UUID productionId, Wanted wanted) {
        return with("select count(*)" + ENDED, productionId, wanted)
                .query(Long.class)
                .single();
    }

    Paged<Offload> page(UUID productionId, Wanted wanted, int asked) {
        long total = count(productionId, wanted);
        int number = Paged.shown(asked, SIZE, total);
        List<Offload> rows = with(
                        "select *" + ENDED + " order by " + wanted.order().column().sql
                                + wanted.order().direction()
                                + " nulls last, s.ended_at desc, s.id limit :limit offset :offset",
                        productionId,
                        wanted)
                .param("limit", SIZE)
                .param("offset", Paged.offset(number, SIZE))
                .query(Offload.class)
                .list();
        return new Paged<>(rows, number, SIZE, total);
    }

    private JdbcClient.StatementSpec with(String sql, UUID productionId, Wanted wanted) {
        return jdbc.sql(sql)
                .param("production", productionId)
                .param("outcome", wanted.outcome())
                .param("text", wanted.text());
    }
}

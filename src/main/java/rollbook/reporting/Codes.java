package rollbook.reporting;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import rollbook.production.CodeKind;
import rollbook.web.Display;

/** Looks up what people call by a code, of all kinds at once and in one statement. */
@Repository
class Codes {
    /** Fewer digits of a serial number or a SHA-256 would find by chance. */
    private static final int SHORTEST_BEGINNING = 6;

    /** Capitals, without what people put between the parts of a code. */
    private static final String KEY = "regexp_replace(upper(%s), '[\\s_./#-]+', '', 'g')";
    /** The same without the zeros at the beginning of numbers, and with noughts where somebody typed the letter. */
    private static final String LOOSE = "regexp_replace(translate(%s, 'O', '0'), '(\\D|^)0+(\\d)', '\\1\\2', 'g')";

    private static final String FIND = """
            with asked as (select key, %s as loose from (select %s as key) k where key <> ''),
            named as (
              select t.kind, t.id, t.what, t.code, t.also, t.detail, t.on_date, t.state, t.past,
                     t.code_key, %s as code_loose, t.also_key
              from (select x.*, %s as code_key, %s as also_key from (%s) x) t),
            ranked as (
              select n.*, case
                when n.code_key = a.key or n.also_key = a.key or n.also = :iso_date then 0
                when n.code_loose = a.loose or n.also_key <> '' and %s = a.loose then 1
                when starts_with(n.code_key, a.key) or starts_with(n.code_loose, a.loose)
                  or length(a.key) >= :shortest and starts_with(n.also_key, a.key) then 2 end as rank
              from named n cross join asked a)
            select kind, id, what, code, detail, on_date, state, past, rank from ranked where rank is not null
            order by rank, past, length(code), upper(code), kind limit :most
            """;

    private final JdbcClient jdbc;
    private final List<CodeKind> kinds;
    private final Display display;
    private final String sql;

    Codes(JdbcClient jdbc, ObjectProvider<CodeKind> kinds, Display display) {
        this.jdbc = jdbc;
        this.kinds = kinds.orderedStream().toList();
        this.display = display;
        String parts = IntStream.range(0, this.kinds.size())
                .mapToObj(at ->
                        "select %d as kind, id, what, :word%d || code as code, also, detail, on_date, state, past from (%s) k%d"
                                .formatted(at, at, this.kinds.get(at).rows(), at))
                .collect(Collectors.joining("\nunion all\n"));
        this.sql = FIND.formatted(
                LOOSE.formatted("key"),
                KEY.formatted(":typed"),
                LOOSE.formatted("t.code_key"),
                KEY.formatted("x.code"),
                KEY.formatted("x.also"),
                parts,
                LOOSE.formatted("n.also_key"));
    }

    /** How well a thing's name is what was typed. */
    enum Match {
        /** In all that counts. */
        SAME,
        /** But for zeros at the beginning of numbers, and noughts typed as letters. */
        NEARLY,
        BEGINS
    }

    /**
     * A thing of that name.
     *
     * @param what the message that says what it is
     * @param page as a membership's path takes it
     * @param state the message that words how it stands; empty if there is nothing to say
     * @param past whether it is gone
     */
    record Found(
            UUID id,
            String what,
            String code,
            String detail,
            @Nullable LocalDate onDate,
            String state,
            boolean past,
            Match match,
            String page) {

        /** A card that isn't blank. */
        boolean holdsRoll() {
            return what.equals("inventory.kind.CARD")
                    && state.startsWith("web.card-state.")
                    && !state.equals("web.card-state.BLANK");
        }

        /** The page, or for a card with a roll on it the way to that roll's; for templates. */
        public String leadsTo() {
            return holdsRoll() ? "find?code=" + URLEncoder.encode(code, StandardCharsets.UTF_8) : page;
        }
    }

    /**
     * @param typed without control characters
     * @param date that the text means, if it means one
     * @return the best first
     */
    List<Found> find(UUID productionId, String typed, @Nullable LocalDate date, int most) {
        JdbcClient.StatementSpec asked = jdbc.sql(sql)
                .param("production", productionId)
                .param("typed", typed)
                .param("iso_date", date == null ? "no date" : date.toString())
                .param("shortest", SHORTEST_BEGINNING)
                .param("most", most);
        for (int at = 0; at < kinds.size(); at++) {
            asked = asked.param("word" + at, word(kinds.get(at)));
        }
        return asked.query((row, number) -> {
                    UUID id = row.getObject("id", UUID.class);
                    return new Found(
                            id,
                            row.getString("what"),
                            row.getString("code"),
                            row.getString("detail"),
                            row.getObject("on_date", LocalDate.class),
                            row.getString("state"),
                            row.getBoolean("past"),
                            Match.values()[row.getInt("rank")],
                            kinds.get(row.getInt("kind")).page(id));
                })
                .list();
    }

    /** What stands before the number, which is the last thing said: "Order ". */
    private String word(CodeKind kind) {
        String numbered = kind.numbered();
        if (numbered == null) {
            return "";
        }
        String zeroth = display.text(numbered, 0);
        return zeroth.substring(0, zeroth.lastIndexOf('0'));
    }
}

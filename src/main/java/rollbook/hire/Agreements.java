package rollbook.hire;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import rollbook.web.NotFoundException;

/** The agreements of a production, to look up. */
@Repository
class Agreements {
    private static final String ENTRIES = """
            select a.id, a.number as agreement_number, t.number, t.act, t.supplier_id, s.name as supplier, t.reference,
                   t.started_on, t.due_on, t.minimum_weeks, t.late_day_minor_units, t.note, t.entered_at,
                   p.display_name as entered_by, r.item_id, r.week_minor_units
            from hire_agreement a
            join hire_terms t on t.agreement_id = a.id
            join supplier_supplier s on s.id = t.supplier_id
            join people_person p on p.id = t.entered_by
            left join hire_rate r on r.agreement_id = t.agreement_id and r.number = t.number
            where a.production_id = :production
            """;

    private static final String SORTED = " order by a.number, t.number, r.item_id";

    private final JdbcClient jdbc;

    Agreements(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** By their ids, in the order of their numbers. */
    Map<UUID, HireAgreement> all(UUID productionId) {
        return read(jdbc.sql(ENTRIES + SORTED).param("production", productionId));
    }

    /** @throws NotFoundException if this production has no such agreement */
    HireAgreement get(UUID productionId, UUID agreementId) {
        return Optional.ofNullable(read(jdbc.sql(ENTRIES + " and a.id = :id" + SORTED)
                                .param("production", productionId)
                                .param("id", agreementId))
                        .get(agreementId))
                .orElseThrow(NotFoundException::new);
    }

    private static Map<UUID, HireAgreement> read(JdbcClient.StatementSpec query) {
        Map<UUID, Integer> numbers = new LinkedHashMap<>();
        Map<UUID, Map<Integer, TermsEntry>> entries = new LinkedHashMap<>();
        query.query(row -> {
            UUID id = row.getObject("id", UUID.class);
            numbers.put(id, row.getInt("agreement_number"));
            Map<Integer, TermsEntry> ofAgreement = entries.computeIfAbsent(id, any -> new LinkedHashMap<>());
            TermsEntry entry = ofAgreement.get(row.getInt("number"));
            if (entry == null) {
                entry = entry(row);
                ofAgreement.put(entry.number(), entry);
            }
            if (row.getObject("item_id") != null) {
                entry.weekMinorUnits().put(row.getObject("item_id", UUID.class), row.getLong("week_minor_units"));
            }
        });
        Map<UUID, HireAgreement> agreements = new LinkedHashMap<>();
        numbers.forEach((id, number) -> agreements.put(
                id,
                new HireAgreement(
                        id,
                        number,
                        new TermsHistory(new ArrayList<>(entries.get(id).values())))));
        return agreements;
    }

    private static TermsEntry entry(ResultSet row) throws SQLException {
        return new TermsEntry(
                row.getInt("number"),
                TermsEntry.Act.valueOf(row.getString("act")),
                row.getObject("supplier_id", UUID.class),
                row.getString("supplier"),
                row.getString("reference"),
                row.getDate("started_on").toLocalDate(),
                row.getDate("due_on").toLocalDate(),
                row.getInt("minimum_weeks"),
                row.getObject("late_day_minor_units", Long.class),
                row.getString("note"),
                new LinkedHashMap<>(),
                row.getTimestamp("entered_at").toInstant(),
                row.getString("entered_by"));
    }

    /** Whether each is under an agreement: the agreement's code by the item. */
    Map<UUID, String> codes(UUID productionId, List<UUID> itemIds) {
        Map<UUID, String> codes = new LinkedHashMap<>();
        jdbc.sql("""
                        select i.item_id, a.number from hire_item i join hire_agreement a on a.id = i.agreement_id
                        where a.production_id = :production and i.item_id = any (:items)
                        """)
                .param("production", productionId)
                .param("items", itemIds.toArray(UUID[]::new))
                .query(row -> {
                    codes.put(row.getObject("item_id", UUID.class), HireAgreement.code(row.getInt("number")));
                });
        return codes;
    }
}

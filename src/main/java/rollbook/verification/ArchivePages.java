package rollbook.verification;

import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import rollbook.manifest.ArchiveFinding;
import rollbook.verification.ArchivePage.Member;
import rollbook.verification.ArchivePage.StateCount;

/** What is shown of archives. */
@Repository
class ArchivePages {
    private static final int SHOWN = 200;

    private static final String UNASSIGNED = """
            (select count(*) from verification_part p where p.document_id = m.member_id
               and not exists (select 1 from verification_assignment a where a.part_id = p.id))
            """;

    private final JdbcClient jdbc;

    ArchivePages(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    ArchivePage get(UUID productionId, UUID archiveId) {
        List<Member> members = jdbc.sql("""
                        select m.member_id as document_id, m.path, m.generation, m.state, m.was_here, r.state as reading,
                               coalesce(r.entries, 0) as entries, %s as unassigned
                        from verification_archive_member m
                        left join verification_reading r on r.document_id = m.member_id
                        where m.production_id = ? and m.archive_id = ?
                        order by m.state = 'GOOD', m.position limit ?
                        """.formatted(UNASSIGNED))
                .params(productionId, archiveId, SHOWN)
                .query(Member.class)
                .list();
        List<StateCount> counts = jdbc.sql("""
                        select m.state, count(*) as members, sum(%s)::bigint as unassigned from verification_archive_member m
                        where m.production_id = ? and m.archive_id = ? group by m.state
                        """.formatted(UNASSIGNED))
                .params(productionId, archiveId)
                .query(StateCount.class)
                .list();
        List<ArchiveFinding> findings = jdbc.sql("""
                        select weight, message_key, count, names from verification_archive_finding
                        where production_id = ? and archive_id = ? order by position
                        """)
                .params(productionId, archiveId)
                .query((row, number) -> new ArchiveFinding(
                        ArchiveFinding.Weight.valueOf(row.getString("weight")),
                        row.getString("message_key"),
                        row.getObject("count", Long.class),
                        List.of((String[]) row.getArray("names").getArray())))
                .list();
        long unassigned = counts.stream().mapToLong(StateCount::unassigned).sum();
        return new ArchivePage(members, counts, unassigned, findings);
    }
}

package rollbook.verification;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import rollbook.bench.Figures;

/** Looks for clips of a show of 200 days with 500 clips a day, each listed by a card's document and by two copies'. */
final class ClipBench {
    private static final int DAYS = 200;
    private static final int DOCUMENTS_PER_DAY = 3;
    private static final int ROUNDS = 200;
    private static final double MOST_MILLISECONDS = 50; // no goal is set beyond one indexed query; feels like at once

    private ClipBench() {}

    /** Folder. */
    public static void main(String[] arguments) throws IOException {
        try (Portal portal = Portal.start(Path.of(arguments[0]))) {
            Portal.Show show = portal.show();
            fill(portal, show);
            measure(portal, show, "one clip", "A137C250");
            measure(portal, show, "ten clips", "A137C25");
            measure(portal, show, "all of the show", "A");
            List<String> plan = portal.jdbc()
                    .sql("explain " + ClipSearch.SEARCH)
                    .param("production", show.production().id)
                    .param("from", "A137C25")
                    .param("to", "A137C25\uffff")
                    .param("most", ClipSearch.MOST + 1)
                    .query(String.class)
                    .list();
            boolean indexed = plan.stream().anyMatch(line -> line.contains("verification_clip_name_ix"))
                    && plan.stream().noneMatch(line -> line.contains("Seq Scan on verification_clip"));
            Figures.done("clip search: one query by the index", indexed, "yes");
        }
    }

    private static void measure(Portal portal, Portal.Show show, String what, String text) {
        ClipSearch search = portal.get(ClipSearch.class);
        double[] milliseconds = new double[ROUNDS];
        for (int round = -ROUNDS; round < ROUNDS; round++) {
            long start = System.nanoTime();
            ClipSearch.Page page = search.find(show.production().id, text, "");
            milliseconds[Math.max(0, round)] = Figures.seconds(start) * 1_000;
            if (page.clips().isEmpty()) {
                throw new IllegalStateException("nothing found for " + text);
            }
        }
        Figures.atMost("clip search: " + what, Figures.median(milliseconds), "ms", MOST_MILLISECONDS, "");
    }

    private static void fill(Portal portal, Portal.Show show) {
        portal.jdbc()
                .sql("""
                        with day as (
                            insert into verification_document (id, production_id, sha256, file_name, size_bytes, uploaded_at, uploaded_by)
                            select gen_random_uuid(), :production, sha256(n::text::bytea), n::text, 1, now(), :person
                            from generate_series(0, :documents - 1) n
                            returning id, file_name::int as n),
                        part as (
                            insert into verification_part (id, production_id, document_id, folder, entries, size_bytes, position)
                            select id, :production, id, '', 1, 1, 0 from day)
                        select count(*) from day
                        """)
                .param("production", show.production().id)
                .param("person", show.wrangler().personId())
                .param("documents", DAYS * DOCUMENTS_PER_DAY)
                .query(Long.class)
                .single();
        portal.jdbc()
                .sql("""
                        insert into verification_clip (part_id, production_id, clip, folder, files, missing_frames, gaps)
                        select d.id, :production, to_char(d.file_name::int % :days, '"A"FM000') || to_char(c, '"C"FM000'), '', 1, 0, ''
                        from verification_document d cross join generate_series(1, 500) c where d.production_id = :production
                        """)
                .param("production", show.production().id)
                .param("days", DAYS)
                .update();
        portal.jdbc().sql("analyze").update();
    }
}

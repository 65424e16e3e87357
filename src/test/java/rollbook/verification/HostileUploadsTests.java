package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.manifest.HostileDocuments;
import rollbook.offload.Rolls;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;

/** Hostile documents sent to the portal: each is kept, read or rejected with words, and shown; nothing breaks. */
@PortalTest
class HostileUploadsTests {
    private static final long SEED = 8_493;
    /** Of the corpus one in so many: all of them are thrown at the readers alone. */
    private static final int ONE_IN = 60;

    private static final int TOGETHER = 20;
    private static final int LARGEST = 2_000_000;

    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Jobs jobs;

    @Autowired
    Rolls rolls;

    @Autowired
    JdbcClient jdbc;

    @Test
    void whateverIsSentIsReadOrRejectedInWords() {
        DocumentScene scene = new DocumentScene(fixtures, mvc, rolls);
        scene.roll("A001");
        List<MockMultipartFile> sample = sample();
        assertThat(sample).hasSizeGreaterThan(300);
        for (int from = 0; from < sample.size(); from += TOGETHER) {
            List<MockMultipartFile> some = sample.subList(from, Math.min(sample.size(), from + TOGETHER));
            assertThat(scene.send(Role.WRANGLER, "CARD", some.toArray(MockMultipartFile[]::new)))
                    .as("seed %d, from document %d", SEED, from)
                    .hasStatus3xxRedirection();
        }
        jobs.run();
        Map<String, Integer> states = states(scene.production.id);
        assertThat(states.keySet()).containsOnly("READ", "REJECTED");
        assertThat(states.get("READ")).isPositive();
        rejected(scene.production.id).forEach(document -> {
            MvcTestResult page = mvc.get()
                    .uri(scene.production.path("documents/" + document))
                    .with(scene.production.signedInAs(Role.WRANGLER))
                    .exchange();
            assertThat(page).as("document %s", document).hasStatusOk();
            String shown = Jsoup.parse(new String(page.getResponse().getContentAsByteArray(), StandardCharsets.UTF_8))
                    .select("main")
                    .text();
            assertThat(shown).as("document %s", document).doesNotContain("Exception", "manifest.problem", "??");
        });
    }

    private static List<MockMultipartFile> sample() {
        List<MockMultipartFile> sample = new ArrayList<>();
        int[] count = {0};
        HostileDocuments.forEach(SEED, document -> {
            if (count[0]++ % ONE_IN == 0 && document.bytes().length < LARGEST) {
                sample.add(DocumentScene.file(document.fileName(), document.bytes()));
            }
        });
        return sample;
    }

    private Map<String, Integer> states(UUID production) {
        Map<String, Integer> states = new java.util.TreeMap<>();
        jdbc.sql("select state, count(*) as documents from verification_reading where production_id = ? group by state")
                .param(production)
                .query(row -> {
                    states.put(row.getString("state"), row.getInt("documents"));
                });
        return states;
    }

    /** One document of each problem: the pages of the others are the same. */
    private List<UUID> rejected(UUID production) {
        return jdbc.sql("""
                        select distinct on (problem) document_id from verification_reading
                        where production_id = ? and state = 'REJECTED' order by problem, document_id
                        """).param(production).query(UUID.class).list();
    }
}

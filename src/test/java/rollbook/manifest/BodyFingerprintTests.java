package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** What may be touched up in a copied document must not move the fingerprint, and what a reading finds must. */
class BodyFingerprintTests {
    private static final String MD5_1 = "d41d8cd98f00b204e9800998ecf8427e";
    private static final String MD5_2 = "900150983cd24fb0d6963f7d28e17f72";
    private static final String LIST = MD5_1 + "  A001/one.mxf\n" + MD5_2 + "  A001/two.mxf\n";

    @Test
    void anAscMhlDocumentWithAnotherHostDateToolAuthorAndPlaceHasTheSameBody() throws Exception {
        String touchedUp = mhl().replace("cart-a.example", "cart-b.example")
                .replace("<creationdate>2026-03-04T18:05:12Z", "<creationdate>2026-03-04T21:40:00Z")
                .replace("version=\"0.1\">example-writer", "version=\"0.2\">other-writer")
                .replace("<comment>", "<author role=\"x\">Somebody</author><location>Elsewhere</location><comment>")
                .replace("\n  ", "\n        ");

        assertThat(touchedUp).isNotEqualTo(mhl());
        assertThat(body(touchedUp)).isEqualTo(body(mhl()));
    }

    @Test
    void whatAReadingFindsOrSaysMakesAnotherBody() throws Exception {
        List<String> others = List.of(
                mhl().replace("Clips/R001C001.mxf", "Clips/R001C009.mxf"),
                mhl().replace("size=\"19\"", "size=\"20\""),
                mhl().replace("72dc241b4a0d650d", "72dc241b4a0d650e"),
                mhl().replace("action=\"original\"", "action=\"verified\""),
                mhl().replace("in-place", "transfer"),
                mhl().replace("size=\"19\"", "size=\"19\" lastmodificationdate=\"2026-03-04T16:20:00+01:00\""),
                mhl().replace("action=", "hashdate=\"2026-03-04T18:05:12Z\" action="),
                mhl().replace("action=", "hashdate=\"2026-03-04T18:05:13Z\" action="),
                mhl().replace("Read from SHUTTLE_01", "Read from VAULT_01"),
                mhl().replace(
                                "<xxh64 action=\"original\">6532dd39691a0392</xxh64>",
                                "<md5 action=\"original\">" + MD5_1 + "</md5>"));

        Set<Long> bodies = new HashSet<>(Set.of(body(mhl())));
        for (String other : others) {
            assertThat(bodies.add(body(other))).as(other).isTrue();
        }
    }

    @Test
    void aListWithOtherCommentsLineEndsAndOrderHasTheSameBody() throws Exception {
        assertThat(body("# read again\n" + LIST)).isEqualTo(body(LIST));
        assertThat(body(LIST.replace("\n", "\r\n"))).isEqualTo(body(LIST));
        assertThat(body(MD5_2.toUpperCase(java.util.Locale.ROOT) + "  A001/two.mxf\n" + MD5_1 + "  A001/one.mxf\n"))
                .isEqualTo(body(LIST));
        assertThat(body(LIST.replace("A001/", "VAULT-1/A001/")))
                .as("the medium’s name in the paths")
                .isNotEqualTo(body(LIST));
        assertThat(body(LIST + MD5_1 + "  A001/three.mxf\n")).isNotEqualTo(body(LIST));
    }

    /** Digests that changed their files, files that changed their digests: a sum must not let that pass. */
    @Test
    void anyChangeOfAFileChangesTheBodyAndNoOrderDoes() {
        long seed = 20261126;
        Random random = new Random(seed);
        for (int run = 0; run < 300; run++) {
            List<ManifestEntry> entries = new ArrayList<>();
            int files = 2 + random.nextInt(8);
            for (int i = 0; i < files; i++) {
                entries.add(Manifests.file("f" + i, 10L + i, Manifests.digest(ChecksumAlgorithm.MD5, i)));
            }
            long body = body(entries);
            Collections.shuffle(entries, random);
            assertThat(body(entries)).as("seed %d, run %d, order", seed, run).isEqualTo(body);

            int one = random.nextInt(files);
            int other = (one + 1 + random.nextInt(files - 1)) % files;
            ManifestEntry a = entries.get(one);
            ManifestEntry b = entries.get(other);
            entries.set(one, new ManifestEntry(a.path(), a.sizeBytes(), b.checksums(), a.action(), 1));
            entries.set(other, new ManifestEntry(b.path(), b.sizeBytes(), a.checksums(), b.action(), 1));
            assertThat(body(entries))
                    .as("seed %d, run %d, digests swapped", seed, run)
                    .isNotEqualTo(body);
        }
    }

    private static long body(List<ManifestEntry> entries) {
        BodyFingerprint body = new BodyFingerprint();
        entries.forEach(body::add);
        return body.of(new ManifestHeader(
                ManifestFormat.GNU_LIST,
                Set.of(ChecksumAlgorithm.MD5),
                ManifestHeader.AlgorithmBasis.STATED,
                entries.size(),
                0,
                null,
                null,
                ManifestHeader.Process.NONE,
                null,
                null,
                Map.of(),
                null));
    }

    private static long body(String document) throws Exception {
        BodyFingerprint body = new BodyFingerprint();
        ManifestHeader header = new ManifestReader()
                .read(new ByteArrayInputStream(document.getBytes(StandardCharsets.UTF_8)), "list", body::add);
        return body.of(header);
    }

    private static String mhl() {
        return """
                <?xml version="1.0" encoding="UTF-8"?>
                <hashlist xmlns="urn:ASC:MHL:v2.0" version="2.0">
                  <creatorinfo>
                    <creationdate>2026-03-04T18:05:12Z</creationdate>
                    <hostname>cart-a.example</hostname>
                    <tool version="0.1">example-writer</tool>
                    <comment>Read from SHUTTLE_01</comment>
                  </creatorinfo>
                  <processinfo>
                    <process>in-place</process>
                  </processinfo>
                  <hashes>
                    <hash>
                      <path size="19">Clips/R001C001.mxf</path>
                      <xxh64 action="original">72dc241b4a0d650d</xxh64>
                    </hash>
                    <hash>
                      <path size="19">Clips/R001C002.mxf</path>
                      <xxh64 action="original">6532dd39691a0392</xxh64>
                    </hash>
                  </hashes>
                </hashlist>
                """;
    }
}

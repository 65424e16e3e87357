package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;

/** Whatever happens to the parts of a file on their way, it becomes a document with its very bytes, or none. */
@PortalTest
class UploadPropertyTests {
    private static final int FILES = 40;
    private static final int ACTS = 30;

    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Documents documents;

    @Autowired
    DocumentContent content;

    @Test
    void theDocumentHasTheBytesOfTheFileOrThereIsNone() throws Exception {
        long seed = new SplittableRandom().nextLong();
        SplittableRandom seeds = new SplittableRandom(seed);
        for (int i = 0; i < FILES; i++) {
            long one = seeds.nextLong();
            try {
                check(new SplittableRandom(one));
            } catch (AssertionError | RuntimeException failure) {
                throw new AssertionError("seed %d, file %d with seed %d".formatted(seed, i, one), failure);
            }
        }
    }

    private void check(SplittableRandom random) throws Exception {
        TestProduction production = fixtures.production();
        UploadScene sender = new UploadScene(mvc, production, Role.WRANGLER);
        byte[] file = new byte[1 + random.nextInt(3000)];
        random.nextBytes(file);
        String address = UploadScene.address(sender.begin("file.md5", file, random.nextInt(file.length)));
        for (int act = 0; act < ACTS; act++) {
            act(random, sender, address, file);
            nothingOrAllIsThere(production, sender, address, file);
        }
        // The sender goes on from where the portal says, as one who has lost its own count.
        MvcTestResult looked = sender.look(address);
        if (!UploadScene.complete(looked)) {
            int offset = Math.toIntExact(UploadScene.offset(looked));
            MvcTestResult ended = sender.part(address, offset, Arrays.copyOfRange(file, offset, file.length), true);
            assertThat(UploadScene.complete(ended)).isTrue();
        }
        nothingOrAllIsThere(production, sender, address, file);
    }

    /** A part from anywhere to anywhere, whole, cut on its way or damaged, or the same file chosen again. */
    private static void act(SplittableRandom random, UploadScene sender, String address, byte[] file) {
        int kept = Math.toIntExact(UploadScene.offset(sender.look(address)));
        int from = random.nextInt(3) == 0 ? random.nextInt(file.length + 1) : kept;
        int to = from + random.nextInt(file.length - from + 1);
        byte[] part = Arrays.copyOfRange(file, from, to);
        String digest = UploadScene.digest(part);
        boolean last = random.nextInt(4) == 0;
        switch (random.nextInt(6)) {
            case 0 -> sender.part(address, from, Arrays.copyOf(part, random.nextInt(part.length + 1)), last, digest);
            case 1 -> {
                if (part.length > 0) {
                    part[random.nextInt(part.length)] ^= (byte) (1 << random.nextInt(8));
                }
                sender.part(address, from, part, last, digest);
            }
            case 2 -> sender.begin("file.md5", file, random.nextInt(file.length));
            case 3 -> {
                sender.part(address, from, part, last);
                sender.part(address, from, part, last);
            }
            default -> sender.part(address, from, part, last);
        }
    }

    private void nothingOrAllIsThere(TestProduction production, UploadScene sender, String address, byte[] file)
            throws Exception {
        boolean complete = UploadScene.complete(sender.look(address));
        List<Document> stored = documents.newest(production.id, 0, 2);
        assertThat(stored).hasSize(complete ? 1 : 0);
        if (complete) {
            assertThat(content.open(stored.get(0).id()).readAllBytes()).isEqualTo(file);
        }
    }
}

package rollbook.journey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Documents are sent by several people at once while the portal, its PostgreSQL server or both are killed with SIGKILL.
 * Whatever a page said was stored must be there afterwards, byte for byte, and its verdict must follow.
 */
class KilledPortalCrashTests {
    private static final int SENDERS = 3;
    private static final int KILLS = 3;
    private static final Duration SOON = Duration.ofSeconds(90);
    private static final SplittableRandom SEEDS = new SplittableRandom();

    @TempDir
    Path folder;

    enum Victim {
        PORTAL,
        DATABASE,
        BOTH;

        void kill(PortalProcess portal) throws Exception {
            if (this != PORTAL) {
                portal.killDatabase();
            }
            if (this != DATABASE) {
                portal.kill();
            }
        }
    }

    @ParameterizedTest(name = "kill -9 of {0} while documents are sent")
    @EnumSource
    void whatWasAcknowledgedIsThereAndIsJudged(Victim victim) throws Exception {
        long seed = SEEDS.nextLong();
        System.out.println("Killing " + victim + ", seed " + seed);
        SplittableRandom random = new SplittableRandom(seed);
        Map<String, byte[]> acknowledged = new ConcurrentHashMap<>();
        Path data = folder.resolve("data");
        PortalProcess portal = PortalProcess.start(data);
        try {
            prepare(portal);
            for (int kill = 0; kill < KILLS; kill++) {
                sendUntilKilled(
                        portal, victim, acknowledged, acknowledged.size() + 2 + random.nextInt(12), seed + kill);
                if (victim != Victim.DATABASE) {
                    portal = PortalProcess.start(data);
                }
                everythingAcknowledgedIsThere(portal, acknowledged, seed);
            }
            verdictFollows(portal);
        } finally {
            portal.close();
        }
    }

    private static void prepare(PortalProcess portal) {
        try (HttpVisitor visitor = new HttpVisitor(portal.base())) {
            WholeLoop loop = new WholeLoop(visitor);
            loop.setUp(portal.setupCode());
            loop.signIn();
            loop.describeProduction();
            loop.addFormat();
            loop.enterSchedule();
            loop.registerMedia();
            loop.shootAndOffload();
        }
    }

    private void sendUntilKilled(
            PortalProcess portal, Victim victim, Map<String, byte[]> acknowledged, int killAt, long seed)
            throws Exception {
        AtomicBoolean stop = new AtomicBoolean();
        ExecutorService threads = Executors.newFixedThreadPool(SENDERS);
        List<Future<?>> senders = new ArrayList<>();
        for (int sender = 0; sender < SENDERS; sender++) {
            Sender one = new Sender(portal, folder, "s" + Long.toHexString(seed) + "-" + sender, acknowledged, stop);
            senders.add(threads.submit(one));
        }
        await().atMost(SOON).until(() -> acknowledged.size() >= killAt);
        victim.kill(portal);
        stop.set(true);
        for (Future<?> sender : senders) {
            sender.get(SOON.toSeconds(), TimeUnit.SECONDS);
        }
        threads.shutdown();
    }

    private static void everythingAcknowledgedIsThere(
            PortalProcess portal, Map<String, byte[]> acknowledged, long seed) {
        try (HttpVisitor visitor = new HttpVisitor(portal.base())) {
            await().atMost(SOON).ignoreExceptions().until(() -> {
                visitor.open("/sign-in");
                new WholeLoop(visitor).signIn();
                return true;
            });
            acknowledged.forEach((sha256, content) -> {
                visitor.find(sha256);
                assertThat(visitor.text())
                        .as("seed %d, document %s", seed, sha256)
                        .contains(sha256);
                assertThat(visitor.download(visitor.address() + "/content"))
                        .as("seed %d, bytes of %s", seed, sha256)
                        .isEqualTo(content);
            });
        }
    }

    /** All of them were lists of the one copy, equal to the card's; so the copy is proven once they are read. */
    private void verdictFollows(PortalProcess portal) throws IOException {
        try (HttpVisitor visitor = new HttpVisitor(portal.base())) {
            visitor.open("/sign-in");
            WholeLoop loop = new WholeLoop(visitor);
            loop.signIn();
            loop.upload("the card itself", Files.write(folder.resolve("card.md5"), Sender.list("card")));
            loop.rollSays("SHUTTLE-01", "proven");
            visitor.goTo("Documents");
            await().atMost(SOON).untilAsserted(() -> {
                visitor.reload();
                assertThat(visitor.text()).contains("Being read (0)", "Waiting for people (0)", "Rejected (0)");
            });
        }
    }

    /** One person at a time who sends one document after the other, until the portal is gone. */
    private record Sender(
            PortalProcess portal, Path folder, String name, Map<String, byte[]> acknowledged, AtomicBoolean stop)
            implements Runnable {
        /** Enough lines to be killed in the middle of. */
        private static final int LINES = 4_000;

        static byte[] list(String medium) {
            StringBuilder list = new StringBuilder();
            for (int i = 1; i <= LINES; i++) {
                list.append("%032x  %s/A001/A001C%04d.mxf%n".formatted(i, medium, i));
            }
            return list.toString().getBytes(java.nio.charset.StandardCharsets.UTF_8);
        }

        @Override
        public void run() {
            try (HttpVisitor visitor = new HttpVisitor(portal.base())) {
                visitor.open("/sign-in");
                WholeLoop loop = new WholeLoop(visitor);
                loop.signIn();
                for (int number = 0; !stop.get(); number++) {
                    byte[] content = list(name + "-" + number);
                    Path file = Files.write(folder.resolve(name + "-" + number + ".md5"), content);
                    visitor.goTo("Documents");
                    visitor.choose("These documents describe", "SHUTTLE-01");
                    if (number % 2 == 0 ? sendsByForm(visitor, file) : sendsInParts(visitor, file)) {
                        acknowledged.put(
                                HexFormat.of()
                                        .formatHex(MessageDigest.getInstance("SHA-256")
                                                .digest(content)),
                                content);
                    }
                }
            } catch (UncheckedIOException | AssertionError e) {
                // The portal was killed under this person's hands: a broken connection, or a page that says that
                // something broke. Neither acknowledged anything.
                assertThat(stop.get() || !portal.isUndisturbed())
                        .as("nothing breaks before the kill: %s", e)
                        .isTrue();
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        }

        private static boolean sendsByForm(HttpVisitor visitor, Path file) {
            visitor.attach("Files", List.of(file));
            visitor.press("Send");
            return visitor.text().contains("Stored, SHA-256");
        }

        private static boolean sendsInParts(HttpVisitor visitor, Path file) throws IOException {
            return visitor.sendInParts(file.getFileName().toString(), Files.readString(file));
        }
    }
}

package rollbook.journey;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The whole loop on files that nobody here wrote: the running Java's own folder, hashed by the system's programs,
 * damaged by hand, and all of it through HTTP.
 */
class RealFilesJourneyTests {
    /** Enough to be real, little enough to be copied four times on a small machine. */
    private static final long MOST_BYTES = 100_000_000;

    @TempDir
    Path folder;

    private Path card;
    private Path shuttle;
    private Path vault;

    @Test
    void findsExactlyTheDamagedFilesAndClearsTheCardOnlyOnceTheBadCopyIsMadeAgain() throws Exception {
        copyTwice();
        List<Path> files = RealFiles.list(shuttle.resolve("A001"));
        assertThat(files).hasSizeGreaterThan(50);
        Path flipped = largest(vault.resolve("A001"));
        Path removed =
                files.stream().filter(file -> !file.equals(flipped)).findFirst().orElseThrow();
        Path renamed = files.stream()
                .filter(file -> !file.equals(flipped) && !file.equals(removed))
                .filter(this::hasContentOfItsOwn)
                .findFirst()
                .orElseThrow();
        RealFiles.flipOneByte(vault.resolve("A001").resolve(flipped));
        Files.delete(vault.resolve("A001").resolve(removed));
        Files.move(vault.resolve("A001").resolve(renamed), vault.resolve("A001").resolve(renamed + ".renamed"));

        try (PortalProcess portal = PortalProcess.start(folder.resolve("data"));
                HttpVisitor visitor = new HttpVisitor(portal.base())) {
            WholeLoop loop = new WholeLoop(visitor);
            loop.setUp(portal.setupCode());
            loop.signIn();
            loop.describeProduction();
            loop.addFormat();
            loop.enterSchedule();
            loop.registerMedia();
            loop.shootAndOffload();

            loop.upload("the card itself", listsOf(card, "card").toArray(Path[]::new));
            loop.upload("SHUTTLE-01", listsOf(shuttle, "shuttle").toArray(Path[]::new));
            loop.upload("VAULT-01", listsOf(vault, "vault").toArray(Path[]::new));

            loop.rollSays("SHUTTLE-01", "proven", "failed", "1 file differs", "Files on VAULT-01 that don’t agree");
            assertThat(differences(visitor))
                    .containsExactlyInAnyOrder("different bytes " + flipped, "missing " + removed, "moved " + renamed);
            assertThat(visitor.text()).contains(renamed + ".renamed");
            loop.clearingIsRefused("1 file differs on VAULT-01.");

            makeVaultCopyAgain();
            loop.makeVaultCopyAgain();
            loop.upload("VAULT-01", RealFiles.hash(vault, folder.resolve("vault-again.md5"), "md5sum"));
            loop.rollSays("The card may be cleared.");
            loop.clearAndErase();
        }
    }

    private void copyTwice() throws IOException {
        card = folder.resolve("card");
        shuttle = folder.resolve("shuttle");
        vault = folder.resolve("vault");
        RealFiles.copy(Path.of(System.getProperty("java.home")), card.resolve("A001"), MOST_BYTES);
        RealFiles.copy(card, shuttle, Long.MAX_VALUE);
        RealFiles.copy(card, vault, Long.MAX_VALUE);
    }

    private void makeVaultCopyAgain() throws IOException {
        vault = folder.resolve("vault-again");
        RealFiles.copy(card, vault, Long.MAX_VALUE);
    }

    /** One list for each program that this system has; in the style of one that differs from the other's. */
    private List<Path> listsOf(Path of, String name) throws Exception {
        List<Path> lists = new java.util.ArrayList<>();
        lists.add(RealFiles.hash(of, folder.resolve(name + ".md5"), "md5sum"));
        lists.add(RealFiles.hash(of, folder.resolve(name + ".sha1"), "sha1sum", "--tag"));
        if (RealFiles.has("xxhsum")) {
            lists.add(RealFiles.hash(of, folder.resolve(name + ".xxh64"), "xxhsum", "-H1"));
        }
        return lists;
    }

    /** What the roll's page lists of the files that don't agree: what was found, and the path. */
    private static List<String> differences(HttpVisitor visitor) {
        return visitor.rowsUnder("Files on VAULT-01 that don’t agree").stream()
                .map(row -> row.get(1).split(" \\S*\\.renamed")[0] + " " + row.get(0))
                .toList();
    }

    private Path largest(Path of) throws IOException {
        Path largest = null;
        for (Path file : RealFiles.list(of)) {
            if (largest == null || Files.size(of.resolve(file)) > Files.size(of.resolve(largest))) {
                largest = file;
            }
        }
        return largest;
    }

    private boolean hasContentOfItsOwn(Path file) {
        try {
            byte[] content = Files.readAllBytes(card.resolve("A001").resolve(file));
            for (Path other : RealFiles.list(card.resolve("A001"))) {
                Path path = card.resolve("A001").resolve(other);
                if (!other.equals(file)
                        && Files.size(path) == content.length
                        && java.util.Arrays.equals(Files.readAllBytes(path), content)) {
                    return false;
                }
            }
            return true;
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}

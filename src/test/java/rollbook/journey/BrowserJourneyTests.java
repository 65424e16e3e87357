package rollbook.journey;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The whole loop in a browser, on a wide window and on a phone's, by what a person sees; and on a phone's again in a browser
 * that runs no scripts.
 */
class BrowserJourneyTests {
    @TempDir
    Path folder;

    @ParameterizedTest(name = "in a window {0} pixels wide, scripts: {1}")
    @CsvSource({"1280, true", "390, true", "390, false"})
    void aCardGoesFromBlankToBlankAgain(int width, boolean scripts) throws Exception {
        Path clip =
                Files.createDirectories(folder.resolve("card").resolve("A001")).resolve("A001C001.mxf");
        Files.writeString(clip, "pictures");
        Files.writeString(clip.resolveSibling("A001C002.mxf"), "more pictures");
        RealFiles.copy(folder.resolve("card"), folder.resolve("shuttle"), Long.MAX_VALUE);
        RealFiles.copy(folder.resolve("card"), folder.resolve("vault"), Long.MAX_VALUE);
        RealFiles.flipOneByte(folder.resolve("vault").resolve("A001").resolve("A001C002.mxf"));

        try (PortalProcess portal = PortalProcess.start(folder.resolve("data"));
                BrowserVisitor visitor = new BrowserVisitor(portal.base(), width, scripts)) {
            WholeLoop loop = new WholeLoop(visitor);
            loop.setUp(portal.setupCode());
            loop.signIn();
            loop.describeProduction();
            loop.addFormat();
            loop.enterSchedule();
            loop.registerMedia();
            loop.shootAndOffload();

            loop.upload("the card itself", hashed("card", "card.md5"));
            loop.upload("SHUTTLE-01", hashed("shuttle", "shuttle.md5"));
            loop.upload("VAULT-01", hashed("vault", "vault.md5"));
            loop.rollSays("A001C002.mxf", "different bytes", "1 file differs on VAULT-01");
            assertThat(visitor.sidewaysOverflow())
                    .as("the page fits the window")
                    .isZero();
            loop.clearingIsRefused("1 file differs on VAULT-01.");

            loop.makeVaultCopyAgain();
            RealFiles.copy(folder.resolve("card"), folder.resolve("vault-again"), Long.MAX_VALUE);
            loop.upload("VAULT-01", hashed("vault-again", "vault-again.md5"));
            loop.rollSays("The card may be cleared.");
            loop.clearAndErase();
            assertThat(visitor.complaints()).as("complaints of the browser").isEmpty();
        }
    }

    private Path hashed(String of, String list) throws Exception {
        return RealFiles.hash(folder.resolve(of), folder.resolve(list), "md5sum");
    }
}

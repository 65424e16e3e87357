package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static rollbook.verification.EvidenceScene.DIGEST_1;
import static rollbook.verification.EvidenceScene.DIGEST_2;
import static rollbook.verification.EvidenceScene.OTHER_1;
import static rollbook.verification.EvidenceScene.OTHER_2;
import static rollbook.verification.EvidenceScene.list;
import static rollbook.verification.EvidenceScene.mhl;

import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import rollbook.manifest.ReferenceFacts.RoundTrip;
import rollbook.manifest.Verdict;
import rollbook.offload.Copies;
import rollbook.offload.Encoding;
import rollbook.offload.Offloads;
import rollbook.offload.Rolls;
import rollbook.production.Rendition;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;
import rollbook.web.Refusal;

/** Encoded copies have their own reference, and decoded files prove the encoding or don't. */
@PortalTest
class RoundTripTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Rolls rolls;

    @Autowired
    Copies copies;

    @Autowired
    Jobs jobs;

    @Autowired
    Verdicts verdicts;

    @Autowired
    Offloads offloads;

    @Autowired
    Clearances clearances;

    @Autowired
    ProofSummaries summaries;

    @Autowired
    JdbcClient jdbc;

    private EvidenceScene scene;
    private UUID roll;

    @BeforeEach
    void makeARoll() {
        scene = new EvidenceScene(fixtures, mvc, rolls, copies, jobs, verdicts, jdbc);
        roll = scene.roll("A001");
    }

    @Test
    void anEncodedCopyIsProvenByTheEncodersOutputAndNeverByTheCard() {
        sendCard();
        scene.send(scene.encoded, "e1.md5", encoded("on ENCODED-1"));
        scene.send(scene.encodedToo, "e2.md5", encoded("on ENCODED-2"));
        assertThat(scene.verdictOn(roll, scene.encodedToo).verdict()).isEqualTo(Verdict.CONSISTENT);
        assertThat(scene.reasonsOn(roll, scene.encodedToo))
                .containsExactly("NO_ENCODER_CHECKSUMS", "NO_ROUND_TRIP", "SAME_LINES_FOR_TWO_COPIES");

        sendOutput();
        assertThat(scene.verdictOn(roll, scene.encoded).verdict()).isEqualTo(Verdict.PROVEN);
        assertThat(scene.verdictOn(roll, scene.encoded).roundTrip(Rendition.ENCODED))
                .isEqualTo(RoundTrip.ABSENT);
    }

    @Test
    void decodedFilesThatEqualTheCardsProveTheEncodingOfEveryEncodedCopy() {
        sendCard();
        sendOutput();
        scene.send(scene.encoded, "e1.md5", encoded("on ENCODED-1"));
        scene.send("DECODED", "decoded.md5", list("decoded", "A001", DIGEST_1, DIGEST_2));

        assertThat(roundTrip().verdict()).isEqualTo(Verdict.PROVEN);
        assertThat(scene.verdictOn(roll, scene.encoded).verdict()).isEqualTo(Verdict.PROVEN);
        assertThat(scene.reasonsOn(roll, scene.encoded)).containsExactly("ROUND_TRIP_PROVEN");
        assertThat(scene.verdictOn(roll, scene.encoded).roundTrip(Rendition.ENCODED))
                .isEqualTo(RoundTrip.PROVEN);
        assertThat(verdicts.ofRoll(scene.production.id, roll))
                .as("no copy of its own")
                .hasSize(1);
    }

    @Test
    void decodedFilesMayHaveOtherNames() {
        sendCard();
        sendOutput();
        scene.send(
                "DECODED",
                "decoded.md5",
                list("decoded", "A001", DIGEST_1, DIGEST_2).replace(".mxf", ".dng"));

        assertThat(roundTrip().verdict()).isEqualTo(Verdict.PROVEN);
        assertThat(roundTrip().reasons()).containsExactly("MOVED_FILES");
    }

    @Test
    void aDecodedFileWithOtherBytesIsNamedAndProvesNothing() throws Exception {
        sendCard();
        sendOutput();
        scene.send(scene.encoded, "e1.md5", encoded("on ENCODED-1"));
        scene.send("DECODED", "decoded.md5", list("decoded", "A001", DIGEST_1, OTHER_2));

        CopyVerdict failed = roundTrip();
        assertThat(failed.verdict()).isEqualTo(Verdict.FAILED);
        assertThat(scene.reasonsOn(roll, scene.encoded)).containsExactly("NO_ROUND_TRIP");
        assertThat(scene.verdictOn(roll, scene.encoded).roundTrip(Rendition.ENCODED))
                .isEqualTo(RoundTrip.ABSENT);
        assertThat(scene.see("rolls/" + roll + "/round-trips/" + failed.id()).text())
                .contains("two.mxf", "1 decoded file equals the card’s, 1 differs, none is missing.")
                .doesNotContain("one.mxf");

        scene.send("DECODED", "decoded2.md5", list("decoded once more", "A001", DIGEST_1, DIGEST_2));
        assertThat(roundTrip().verdict()).isEqualTo(Verdict.PROVEN);
        assertThat(scene.reasonsOn(roll, scene.encoded)).containsExactly("ROUND_TRIP_PROVEN");
    }

    @Test
    void theCardsOwnDocumentIsNoRoundTripAndWithoutOneOfTheCardNothingIs() {
        sendOutput();
        scene.send(scene.shuttle, "s.md5", list("shuttle", "A001", DIGEST_1, DIGEST_2));
        scene.send("DECODED", "decoded.md5", list("decoded", "A001", DIGEST_1, DIGEST_2));
        assertThat(roundTrip().verdict()).isEqualTo(Verdict.CONSISTENT);
        assertThat(roundTrip().reasons()).contains("NO_CARD_CHECKSUMS");

        UUID second = scene.roll("A002");
        String ofCard = mhl("cart", "in-place", "original", "A002", 5, DIGEST_1, DIGEST_2);
        scene.send("CARD", "card.mhl", ofCard);
        scene.send("DECODED", "decoded.mhl", ofCard.replace("cart", "coder"));
        assertThat(verdicts.newestOfDecoded(scene.production.id, second).orElseThrow())
                .satisfies(verdict -> assertThat(verdict.verdict()).isEqualTo(Verdict.CONSISTENT))
                .satisfies(verdict -> assertThat(verdict.reasons()).containsExactly("SAME_READING_AS_REFERENCE"));
    }

    @Test
    void filesDecodedBeforeTheEncodersOutputWasListedProveNothingOfIt() {
        sendCard();
        scene.send("DECODED", "decoded.md5", list("decoded", "A001", DIGEST_1, DIGEST_2));
        assertThat(roundTrip().verdict()).isEqualTo(Verdict.PROVEN);
        sendOutput();
        scene.send(scene.encoded, "e1.md5", encoded("on ENCODED-1"));

        assertThat(roundTrip().reasons()).containsExactly("NOT_DECODED");
        assertThat(scene.reasonsOn(roll, scene.encoded)).containsExactly("NO_ROUND_TRIP");
    }

    @Test
    void theSizesOfBothRenditionsAreMeasured() {
        scene.send("CARD", "card.mhl", mhl("cart", "in-place", "original", "A001", 1_000, DIGEST_1, DIGEST_2));
        scene.send("ENCODED_OUTPUT", "output.md5", encoded("no sizes"));
        assertThat(rolls.encodings(scene.production.id))
                .as("a list without sizes tells none")
                .isEmpty();

        String copy = mhl("coder", "in-place", "verified", "A001", 610, OTHER_1, OTHER_2);
        scene.send(scene.encoded, "e1.mhl", copy.replace(".mxf", ".enc"));
        assertThat(rolls.encodings(scene.production.id))
                .as("a copy that agrees tells")
                .containsExactly(new Encoding(roll, 1_220, 2_000));

        UUID second = scene.roll("A002");
        scene.send("CARD", "card2.mhl", mhl("cart", "in-place", "original", "A002", 1_000, DIGEST_1, DIGEST_2));
        scene.send("ENCODED_OUTPUT", "o.mhl", mhl("coder", "in-place", "original", "A002", 500, OTHER_1, OTHER_2));
        assertThat(rolls.encodings(scene.production.id)).contains(new Encoding(second, 1_000, 2_000));
    }

    /** By default encoded copies count only if their encoding is proven; what proved it must go on proving it. */
    @Test
    void anEncodedCopyClearsTheCardOnlyWithARoundTripAndAFailedOneTakesThatBack() {
        scene.production.policy(1);
        UUID reader = scene.production.item("READER-1", "READER", scene.set, null);
        UUID session = offloads.start(
                scene.wrangler, roll, reader, null, List.of(new Offloads.Destination(scene.encoded, scene.leg)));
        offloads.finish(scene.wrangler, session, 1_000);
        sendCard();
        sendOutput();
        scene.send(scene.encoded, "e1.md5", encoded("on ENCODED-1"));
        assertThat(catchThrowableOfType(Refusal.class, this::clear).key()).isEqualTo("verification.refused.held");

        scene.send("DECODED", "d1.md5", list("decoded", "A001", DIGEST_1, DIGEST_2));
        clear();
        scene.send("DECODED", "d2.md5", list("decoded on another day", "A001", DIGEST_1, OTHER_2));
        assertThat(clearances.ofRoll(scene.production.id, roll).get(0).withdrawnAt())
                .isNotNull();

        scene.send("DECODED", "d3.md5", list("decoded once more", "A001", DIGEST_1, DIGEST_2));
        clear();
        clearances.recordErasure(scene.wrangler, roll, "CARD-A001");
        assertThat(summaries.of(scene.production.id).alarms()).isEmpty();
        scene.send("DECODED", "d4.md5", list("decoded too late", "A001", DIGEST_1, OTHER_2));
        assertThat(summaries.of(scene.production.id).alarms()).hasSize(1);
    }

    private void clear() {
        clearances.clear(scene.wrangler, roll, "CARD-A001");
    }

    private CopyVerdict roundTrip() {
        return verdicts.newestOfDecoded(scene.production.id, roll).orElseThrow();
    }

    private void sendCard() {
        scene.send("CARD", "card.md5", list("card", "A001", DIGEST_1, DIGEST_2));
    }

    private void sendOutput() {
        scene.send("ENCODED_OUTPUT", "output.md5", encoded("output"));
    }

    private static String encoded(String comment) {
        return list(comment, "A001", OTHER_1, OTHER_2).replace(".mxf", ".enc");
    }
}

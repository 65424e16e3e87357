package rollbook.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.UnsupportedEncodingException;
import java.nio.charset.StandardCharsets;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.system.CapturedOutput;
import org.springframework.boot.test.system.OutputCaptureExtension;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;

@SiteTest
@ExtendWith(OutputCaptureExtension.class)
class ErrorPagesTests {
    @Autowired
    MockMvcTester mvc;

    @Test
    void anUnknownAddressAndAnUnknownThingAnswerAlike() throws Exception {
        var address = mvc.get().uri("/nothing/here").exchange();
        var thing = roll("14", "unknown");
        assertThat(address).hasStatus(404);
        assertThat(thing).hasStatus(404);
        assertThat(page(thing).select("main").html())
                .isEqualTo(page(address).select("main").html());
    }

    @Test
    void whoLosesTheRaceForALockIsToldSoAndNotThatSomethingBroke() throws Exception {
        assertThat(mvc.get().uri("/p/TIDE/rolls/14?required=crossed"))
                .hasStatus(409)
                .bodyText()
                .contains("Somebody else did something with the same things")
                .doesNotContain("deadlock");
    }

    @Test
    void aRefusalSaysWhatWhyAndWhatToDo() throws Exception {
        var refused = mvc.get()
                .uri("/p/TIDE/rolls/14?required=refused")
                .header("Referer", "http://localhost/p/TIDE/rolls?day=11")
                .exchange();
        assertThat(refused).hasStatus(409);
        assertThat(page(refused).select(".sentence").text())
                .isEqualTo("Card C-014 is held: roll A014 has no proven copy on SHUTTLE-02.");
        assertThat(page(refused).select("main").text()).contains("Upload a list made by reading SHUTTLE-02 back.");
        assertThat(page(refused).select("main a").eachAttr("href")).containsExactly("/p/TIDE/rolls?day=11");
    }

    @Test
    void theWayBackNeverLeadsToAnotherSite() throws Exception {
        for (String referer : new String[] {
            "http://elsewhere.example/p/TIDE/rolls",
            "http://localhost:8081/p/TIDE/rolls",
            "http://[",
            "javascript:x",
            ""
        }) {
            var refused = mvc.get()
                    .uri("/p/TIDE/rolls/14?required=refused")
                    .header("Referer", referer)
                    .exchange();
            assertThat(refused).as(referer).hasStatus(409);
            assertThat(page(refused).select("main a")).as(referer).isEmpty();
        }
    }

    @Test
    void aMistypedAddressIsAskedAgainWithoutJavaWords() throws Exception {
        assertThat(roll("fourteen", "unknown")).hasStatus(400);
        assertThat(page(roll("fourteen", "unknown")).text()).doesNotContain("java.", "Exception", "fourteen");
        assertThat(mvc.get().uri("/p/TIDE/rolls/14").exchange())
                .as("a parameter is missing")
                .hasStatus(400);
        assertThat(mvc.put().uri("/p/TIDE/rolls").exchange()).hasStatus(405);
    }

    @Test
    void aFailureShowsAReferenceThatTheLogKnowsAndNothingElse(CapturedOutput output) throws Exception {
        var failed = roll("14", "broken");
        assertThat(failed).hasStatus(500);
        String reference = page(failed).select("main code").text().replaceFirst(".*: ", "");
        assertThat(reference).matches("[0-9a-f]{8}");
        assertThat(output.getOut()).contains("Failure " + reference).contains("secret detail");
        assertThat(page(failed).text()).doesNotContain("secret detail");
    }

    private MvcTestResult roll(String number, String required) {
        return mvc.get()
                .uri("/p/TIDE/rolls/{number}?required={r}", number, required)
                .exchange();
    }

    private static Document page(MvcTestResult answer) throws UnsupportedEncodingException {
        Document page = Jsoup.parse(answer.getResponse().getContentAsString(StandardCharsets.UTF_8));
        assertThat(page.select("h1")).hasSize(1);
        return page;
    }
}

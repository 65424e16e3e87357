package rollbook.web;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.servlet.http.Cookie;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;

@SiteTest
class RefreshTests {
    private static final String PAGE = "/p/TIDE/rolls";

    @Autowired
    MockMvcTester mvc;

    @Test
    void anOpenPageThatIsTheSameIsToldSoInAFewBytes() throws Exception {
        String fingerprint = fingerprint(mvc.get().uri(PAGE).exchange());
        MvcTestResult again = ask(fingerprint);
        assertThat(again).hasStatus(304);
        assertThat(again.getResponse().getContentAsByteArray()).isEmpty();
    }

    @Test
    void theFingerprintOnThePageIsTheOneInItsHead() throws Exception {
        MvcTestResult page = mvc.get().uri(PAGE).exchange();
        assertThat(page.getResponse().getHeader("ETag")).startsWith("W/\"").isEqualTo(fingerprint(page));
    }

    @Test
    void anOpenPageThatIsOutOfDateGetsTheNewOneWhole() throws Exception {
        MvcTestResult newer = ask("W/\"of an older page\"");
        assertThat(newer).hasStatusOk().bodyText().contains("A014", "</html>");
    }

    @Test
    void whoLoadsAPageGetsItWhole() throws Exception {
        String fingerprint = fingerprint(mvc.get().uri(PAGE).exchange());
        assertThat(mvc.get().uri(PAGE).header("If-None-Match", fingerprint)).hasStatusOk();
    }

    @Test
    void aNewTokenForFormsIsANewPage() throws Exception {
        String one = fingerprint(with(new Cookie(FingerprintedView.TOKEN_COOKIE, "one")));
        assertThat(one).isEqualTo(fingerprint(with(new Cookie(FingerprintedView.TOKEN_COOKIE, "one"))));
        assertThat(one).isNotEqualTo(fingerprint(with(new Cookie(FingerprintedView.TOKEN_COOKIE, "two"))));
    }

    @Test
    void whatAFormIsAnsweredWithIsNotAskedForAgain() throws Exception {
        assertThat(html(mvc.post().uri("/p/TIDE/media").exchange(), 422)).doesNotContain("data-fingerprint");
    }

    @Test
    void anErrorIsNotAskedForAgain() throws Exception {
        assertThat(html(mvc.get().uri("/p/TIDE/rolls/14?required=refused").exchange(), 409))
                .doesNotContain("data-fingerprint");
    }

    @Test
    void whatAgesIsMarkedAndTheFootSaysWhenThePageWasMade() throws Exception {
        var page = Jsoup.parse(html(mvc.get().uri(PAGE).exchange(), 200));
        assertThat(page.selectFirst("time[datetime=2026-07-14T17:42:00Z] span[data-ago]")
                        .text())
                .isEqualTo("12 min ago");
        assertThat(page.selectFirst("time:has(span[data-ago])").text()).isEqualTo("18:42, 12 min ago (Lisbon)");
        assertThat(page.selectFirst(".foot .made-at").text()).isEqualTo("As of 18:54");
    }

    @Test
    void anOpenPageIsNobodyWhoIsThereButAWallStaysOn() {
        MockHttpServletRequest request = new MockHttpServletRequest();
        assertThat(Refresh.isUnattended(request)).isFalse();
        request.addHeader(Refresh.HEADER, "page");
        assertThat(Refresh.isUnattended(request)).isTrue();
        MockHttpServletRequest wall = new MockHttpServletRequest();
        wall.addHeader(Refresh.HEADER, "wall");
        assertThat(Refresh.isUnattended(wall)).isFalse();
    }

    private MvcTestResult ask(String fingerprint) {
        return mvc.get()
                .uri(PAGE)
                .header(Refresh.HEADER, "page")
                .header("If-None-Match", fingerprint)
                .exchange();
    }

    private MvcTestResult with(Cookie cookie) {
        return mvc.get().uri(PAGE).cookie(cookie).exchange();
    }

    private static String fingerprint(MvcTestResult page) throws Exception {
        return Jsoup.parse(html(page, 200)).select("#live").attr("data-fingerprint");
    }

    private static String html(MvcTestResult page, int status) throws Exception {
        assertThat(page).hasStatus(status);
        return page.getResponse().getContentAsString();
    }
}

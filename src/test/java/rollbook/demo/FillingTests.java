package rollbook.demo;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.setup.MockMvcBuilders;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;

/** Pages while the demo is being filled. */
class FillingTests {
    @RestController
    static class SomePage {
        @GetMapping("/some")
        String show() {
            return "the page";
        }
    }

    @Test
    void eachPageSaysSoAndLooksAgainUntilItIsDone() {
        Filling filling = new Filling();
        MockMvcTester mvc = MockMvcTester.create(MockMvcBuilders.standaloneSetup(new SomePage())
                .addInterceptors(filling)
                .setControllerAdvice(filling)
                .build());
        assertThat(mvc.get().uri("/some"))
                .hasStatus(503)
                .hasHeader("Refresh", "5")
                .hasHeader("Retry-After", "5")
                .hasViewName("demo/filling");
        filling.done();
        assertThat(mvc.get().uri("/some")).hasStatusOk().bodyText().isEqualTo("the page");
    }
}

package rollbook.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.mock.web.MockHttpServletRequest;

class FailuresTests {
    @ParameterizedTest
    @CsvSource({
        "/calendar/kq3Zr0-_fCwTnZq8yB4sVn1eQ2hXjYd7aL5uP9mRwEo.ics, /calendar/….ics",
        "/p/SHOW-1/rolls/1b4e28ba-2fa1-11d2-883f-0016d3cca427, /p/SHOW-1/rolls/1b4e28ba-2fa1-11d2-883f-0016d3cca427",
    })
    void theLogNamesThePathButNoSecretInIt(String path, String logged) {
        assertThat(Failures.path(new MockHttpServletRequest("GET", path))).isEqualTo(logged);
    }
}

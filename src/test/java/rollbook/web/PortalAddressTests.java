package rollbook.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.mock.web.MockHttpServletRequest;

class PortalAddressTests {
    @ParameterizedTest
    @CsvSource({
        "'', http://localhost",
        "https://rollbook.example.org, https://rollbook.example.org",
        "https://rollbook.example.org/, https://rollbook.example.org",
        "http://10.0.0.7:8080/portal, http://10.0.0.7:8080/portal",
    })
    void theConfiguredAddressGoesBeforeTheRequests(String configured, String base) {
        assertThat(new PortalAddress(configured).base(new MockHttpServletRequest("GET", "/p/SHOW-1/media/labels")))
                .isEqualTo(base);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "rollbook.example.org",
                "ftp://rollbook.example.org",
                "https:///p",
                "https://rollbook.example.org?x=1",
                "https://rollbook.example.org/#x",
                "https://rollbook example.org",
                "https://a-host-that-is-far-too-long-for-a-label-that-somebody-scans-at-two-in-the-morning.rollbook.example.org",
            })
    void anAddressThatCanNotBeUsedIsNamedAtTheStart(String configured) {
        assertThatThrownBy(() -> new PortalAddress(configured))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("rollbook.address")
                .hasMessageContaining(configured);
    }

    @ParameterizedTest
    @CsvSource({
        "http://localhost:8080, true",
        "http://127.0.0.1, true",
        "http://[::1]:8080, true",
        "http://192.168.1.7:8080, false",
        "https://rollbook.example.org, false",
    })
    void anAddressOfThisMachineIsKnown(String base, boolean here) {
        assertThat(PortalAddress.isThisMachine(base)).isEqualTo(here);
    }
}

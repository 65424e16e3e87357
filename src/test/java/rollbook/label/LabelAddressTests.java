package rollbook.label;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.ZoneId;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rollbook.production.Membership;

class LabelAddressTests {
    private static final Membership MEMBERSHIP = new Membership(
            new UUID(0, 1), "SHOW-1", "Show", ZoneId.of("Europe/Lisbon"), "EUR", new UUID(0, 2), "reader", Set.of());

    @Test
    void itLeadsToTheItemByItsCode() {
        assertThat(LabelAddress.of("https://rollbook.example.org/portal", MEMBERSHIP, "CARD-001"))
                .isEqualTo("https://rollbook.example.org/portal/p/SHOW-1/find?code=CARD-001");
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
        assertThat(LabelAddress.isThisMachine(base)).isEqualTo(here);
    }
}

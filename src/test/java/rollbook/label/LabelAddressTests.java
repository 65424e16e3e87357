package rollbook.label;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.ZoneId;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import rollbook.production.Membership;

class LabelAddressTests {
    private static final Membership MEMBERSHIP = new Membership(
            new UUID(0, 1), "SHOW-1", "Show", ZoneId.of("Europe/Lisbon"), "EUR", new UUID(0, 2), "reader", Set.of());

    @Test
    void itLeadsToTheItemByItsCode() {
        assertThat(LabelAddress.of("https://rollbook.example.org/portal", MEMBERSHIP, "CARD-001"))
                .isEqualTo("https://rollbook.example.org/portal/p/SHOW-1/find?code=CARD-001");
    }
}

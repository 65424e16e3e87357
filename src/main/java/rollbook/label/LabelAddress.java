package rollbook.label;

import java.net.URI;
import java.util.Set;
import org.springframework.web.util.UriComponentsBuilder;
import rollbook.production.Membership;

/** Where labels lead. */
final class LabelAddress {
    private static final Set<String> THIS_MACHINE = Set.of("localhost", "127.0.0.1", "[::1]");

    private LabelAddress() {}

    /** Whether only the machine that the portal runs on understands the address. */
    static boolean isThisMachine(String base) {
        return THIS_MACHINE.contains(URI.create(base).getHost());
    }

    static String of(String base, Membership membership, String itemCode) {
        return UriComponentsBuilder.fromUriString(base)
                .path(membership.path("find"))
                .queryParam("code", "{code}")
                .encode()
                .buildAndExpand(itemCode)
                .toUriString();
    }
}

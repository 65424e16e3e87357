package rollbook.label;

import org.springframework.web.util.UriComponentsBuilder;
import rollbook.production.Membership;

/** Where labels lead. */
public final class LabelAddress {
    private LabelAddress() {}

    public static String of(String base, Membership membership, String itemCode) {
        return UriComponentsBuilder.fromUriString(base)
                .path(membership.path("find"))
                .queryParam("code", "{code}")
                .encode()
                .buildAndExpand(itemCode)
                .toUriString();
    }
}

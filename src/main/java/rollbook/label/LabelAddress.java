package rollbook.label;

import jakarta.servlet.http.HttpServletRequest;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.Set;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;
import org.springframework.web.util.UriComponentsBuilder;
import rollbook.production.Membership;

/** Where labels lead: to the portal at {@code rollbook.address}, else at the address by which its page was asked for. */
@Component
class LabelAddress {
    /** A longer one makes symbols that are too fine for a phone. */
    static final int LONGEST = 100;

    private static final String SETTING = "rollbook.address";
    private static final Set<String> THIS_MACHINE = Set.of("localhost", "127.0.0.1", "[::1]");

    private final String configured;

    @Autowired
    LabelAddress(Environment environment) {
        this(environment.getProperty(SETTING, ""));
    }

    /**
     * @param configured empty for none
     * @throws IllegalArgumentException if it isn't an address by http or https, or too long
     */
    LabelAddress(String configured) {
        this.configured = configured.isBlank() ? "" : checked(configured.strip().replaceAll("/+$", ""));
    }

    private static String checked(String address) {
        try {
            URI uri = new URI(address);
            if (("https".equals(uri.getScheme()) || "http".equals(uri.getScheme()))
                    && uri.getHost() != null
                    && uri.getRawQuery() == null
                    && uri.getRawFragment() == null
                    && address.length() <= LONGEST) {
                return address;
            }
        } catch (URISyntaxException malformed) {
            // Said below, with the setting's name.
        }
        throw new IllegalArgumentException(
                SETTING + " must be the portal's address, such as https://rollbook.example.org, of at most " + LONGEST
                        + " characters, but is: " + address);
    }

    /** The portal's address, without a slash at its end. */
    String base(HttpServletRequest request) {
        return configured.isEmpty()
                ? ServletUriComponentsBuilder.fromContextPath(request).toUriString()
                : configured;
    }

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

package rollbook.web;

import jakarta.servlet.http.HttpServletRequest;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.Set;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;

/**
 * Where links lead that are followed from outside the portal: to {@code rollbook.address}, else to the address by which
 * the portal was asked.
 */
@Component
public class PortalAddress {
    /** A longer one makes QR codes on labels that are too fine for a phone. */
    public static final int LONGEST = 100;

    private static final String SETTING = "rollbook.address";

    private static final Set<String> THIS_MACHINE = Set.of("localhost", "127.0.0.1", "[::1]");

    private final String configured;

    @Autowired
    PortalAddress(Environment environment) {
        this(environment.getProperty(SETTING, ""));
    }

    /**
     * @param configured empty for none
     * @throws IllegalArgumentException if it isn't an address by http or https, or too long
     */
    PortalAddress(String configured) {
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
    public String base(HttpServletRequest request) {
        return configured.isEmpty()
                ? ServletUriComponentsBuilder.fromContextPath(request).toUriString()
                : configured;
    }

    /** The same, for links that are written when nobody asks: as it is set, else as it was asked for another time. */
    public String base(String earlier) {
        return configured.isEmpty() ? earlier : configured;
    }

    /** Whether only the machine that the portal runs on understands the address. */
    public static boolean isThisMachine(String base) {
        return THIS_MACHINE.contains(URI.create(base).getHost());
    }
}

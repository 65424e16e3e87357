package rollbook.web;

import jakarta.servlet.http.HttpServletRequest;
import java.util.UUID;
import java.util.regex.Pattern;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Notes in the log what a person is told no more of than a reference. */
final class Failures {
    private static final Logger log = LoggerFactory.getLogger(Failures.class);

    /** 256 bits in base64url have 43 characters; ids have 36. */
    private static final Pattern SECRET = Pattern.compile("[\\w-]{40,}");

    private Failures() {}

    /** Returns the reference: short enough to be read out over a phone, rare enough to be found in the log. */
    static String log(HttpServletRequest request, Exception failure) {
        String reference = UUID.randomUUID().toString().substring(0, 8);
        log.error("Failure {} at {} {}", reference, request.getMethod(), path(request), failure);
        return reference;
    }

    /** Without what is long enough to be a secret: whoever reads the log must not be let in by it. */
    static String path(HttpServletRequest request) {
        return SECRET.matcher(request.getRequestURI()).replaceAll("…");
    }
}

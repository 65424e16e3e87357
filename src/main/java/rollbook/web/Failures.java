package rollbook.web;

import jakarta.servlet.http.HttpServletRequest;
import java.util.UUID;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Notes in the log what a person is told no more of than a reference. */
final class Failures {
    private static final Logger log = LoggerFactory.getLogger(Failures.class);

    private Failures() {}

    /** Returns the reference: short enough to be read out over a phone, rare enough to be found in the log. */
    static String log(HttpServletRequest request, Exception failure) {
        String reference = UUID.randomUUID().toString().substring(0, 8);
        log.error("Failure {} at {} {}", reference, request.getMethod(), request.getRequestURI(), failure);
        return reference;
    }
}

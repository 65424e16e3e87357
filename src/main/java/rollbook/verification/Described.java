package rollbook.verification;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Duration;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.ResponseCookie;
import rollbook.production.Membership;

/**
 * What a person says that documents describe, as one choice of a form: nothing said, the card itself, what was
 * encoded or decoded from it, or a medium.
 *
 * @param itemId the medium, if it is a copy
 */
record Described(@Nullable Subject subject, @Nullable UUID itemId) {
    /** The cookie in which a browser keeps what was said last. */
    static final String LAST_CHOICE = "rollbook-describes";

    private static final Duration REMEMBERED = Duration.ofHours(12);

    static final Described UNSAID = new Described(null, null);
    static final Described CARD = new Described(Subject.CARD, null);

    private static final List<Subject> OF_NO_MEDIUM = List.of(Subject.CARD, Subject.ENCODED_OUTPUT, Subject.DECODED);

    static Described copyOn(UUID itemId) {
        return new Described(Subject.COPY, itemId);
    }

    /** Anything that is no choice of the form reads as nothing said. */
    static Described of(@Nullable String value) {
        if (value == null || value.isBlank()) {
            return UNSAID;
        }
        for (Subject subject : OF_NO_MEDIUM) {
            if (value.equals(subject.name())) {
                return new Described(subject, null);
            }
        }
        try {
            return copyOn(UUID.fromString(value));
        } catch (IllegalArgumentException e) {
            return UNSAID;
        }
    }

    /** The choice's value in the form. */
    public String value() {
        if (subject == null) {
            return "";
        }
        return itemId == null ? subject.name() : itemId.toString();
    }

    /** Makes it what the same browser is offered first next time. */
    void remember(Membership membership, HttpServletRequest request, HttpServletResponse response) {
        response.addHeader(
                HttpHeaders.SET_COOKIE,
                ResponseCookie.from(LAST_CHOICE, value())
                        .path(request.getContextPath() + membership.path("documents"))
                        .httpOnly(true)
                        .secure(request.isSecure())
                        .sameSite("Lax")
                        .maxAge(subject == null ? Duration.ZERO : REMEMBERED)
                        .build()
                        .toString());
    }
}

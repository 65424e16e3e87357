package rollbook.web;

import jakarta.servlet.http.HttpServletRequest;
import java.net.URI;
import org.jspecify.annotations.Nullable;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.dao.PessimisticLockingFailureException;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.security.core.AuthenticationException;
import org.springframework.web.ErrorResponse;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.method.annotation.MethodArgumentTypeMismatchException;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.util.DisconnectedClientHelper;

/** Turns what a page throws into a page that says what happened and what to do. Runs after every other advice. */
@ControllerAdvice
@Order(Ordered.LOWEST_PRECEDENCE)
class ErrorAdvice {
    private final Display display;

    ErrorAdvice(Display display) {
        this.display = display;
    }

    @ExceptionHandler
    ModelAndView notFound(NotFoundException unknown) {
        return page(HttpStatus.NOT_FOUND, "error/404");
    }

    @ExceptionHandler
    ModelAndView refused(Refusal refusal, HttpServletRequest request) {
        return page(HttpStatus.CONFLICT, "error/409")
                .addObject("sentence", display.text(refusal))
                .addObject("next", display.next(refusal))
                .addObject("back", back(request));
    }

    /** Two people's acts got into each other's way in the database, which let one of them through. */
    @ExceptionHandler
    ModelAndView crossed(PessimisticLockingFailureException crossed, HttpServletRequest request) {
        return refused(new Refusal("web.refused.crossed"), request);
    }

    /** Security answers these itself: with the sign-in page or with 403. */
    @ExceptionHandler({AccessDeniedException.class, AuthenticationException.class})
    void forbidden(RuntimeException refused) {
        throw refused;
    }

    @ExceptionHandler
    ModelAndView mistyped(MethodArgumentTypeMismatchException mistyped, HttpServletRequest request) {
        return page(HttpStatus.BAD_REQUEST, "error/4xx").addObject("back", back(request));
    }

    @ExceptionHandler
    ModelAndView other(Exception failure, HttpServletRequest request) {
        if (DisconnectedClientHelper.isClientDisconnectedException(failure)) {
            // Nobody reads this; yet what a sender broke off must not look like a success to anything in between.
            return page(HttpStatus.BAD_REQUEST, "error/4xx");
        }
        if (failure instanceof ErrorResponse answer && answer.getStatusCode().is4xxClientError()) {
            return page(answer.getStatusCode(), view(answer.getStatusCode())).addObject("back", back(request));
        }
        return page(HttpStatus.INTERNAL_SERVER_ERROR, "error/5xx")
                .addObject("reference", Failures.log(request, failure));
    }

    private static String view(HttpStatusCode status) {
        return switch (status.value()) {
            case 404 -> "error/404";
            case 413 -> "error/413";
            default -> "error/4xx";
        };
    }

    private static ModelAndView page(HttpStatusCode status, String view) {
        var page = new ModelAndView(view);
        page.setStatus(status);
        return page;
    }

    /** The path of the page that the reader came from, if it is one of ours. */
    private static @Nullable String back(HttpServletRequest request) {
        String referer = request.getHeader(HttpHeaders.REFERER);
        if (referer == null) {
            return null;
        }
        try {
            URI from = URI.create(referer);
            boolean ours = request.getServerName().equals(from.getHost()) && port(from) == request.getServerPort();
            return !ours ? null : from.getRawPath() + (from.getRawQuery() == null ? "" : "?" + from.getRawQuery());
        } catch (IllegalArgumentException malformed) {
            return null;
        }
    }

    private static int port(URI address) {
        return address.getPort() != -1 ? address.getPort() : "https".equals(address.getScheme()) ? 443 : 80;
    }
}

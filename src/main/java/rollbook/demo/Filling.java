package rollbook.demo;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.springframework.context.annotation.Profile;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/** As long as the demo is being filled there is nobody to sign in: each page says so instead, and looks again by itself. */
@Component
@ControllerAdvice
@Order(Ordered.HIGHEST_PRECEDENCE)
@Profile("demo")
class Filling implements HandlerInterceptor, WebMvcConfigurer {
    private static final String SECONDS = "5";

    private volatile boolean done;

    void done() {
        done = true;
    }

    private static final class StillFilling extends RuntimeException {
        StillFilling() {
            super(null, null, false, false);
        }
    }

    @Override
    public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler) {
        if (!done && handler instanceof HandlerMethod) {
            throw new StillFilling();
        }
        return true;
    }

    @ExceptionHandler
    String tell(StillFilling filling, HttpServletResponse response) {
        response.setStatus(HttpStatus.SERVICE_UNAVAILABLE.value());
        response.setHeader(HttpHeaders.RETRY_AFTER, SECONDS);
        response.setHeader("Refresh", SECONDS);
        return "demo/filling";
    }

    @Override
    public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(this);
    }
}

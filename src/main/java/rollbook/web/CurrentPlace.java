package rollbook.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.Configuration;
import org.springframework.validation.Errors;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/**
 * Tells the layout where the reader is ({@code place}, the third part of {@code /p/CODE/place/…}) and whether a form
 * on the page is wrong ({@code invalid}, which marks the title). A page may set its own {@code place} in the model.
 */
@Configuration(proxyBeanMethods = false)
class CurrentPlace implements WebMvcConfigurer, HandlerInterceptor {
    private static final Pattern PLACE = Pattern.compile("/p/[^/]+/([^/]+).*");

    @Override
    public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(this);
    }

    @Override
    public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler) {
        Matcher path = PLACE.matcher(
                request.getRequestURI().substring(request.getContextPath().length()));
        if (path.matches()) {
            request.setAttribute("place", path.group(1));
        }
        return true;
    }

    @Override
    public void postHandle(
            HttpServletRequest request, HttpServletResponse response, Object handler, @Nullable ModelAndView page) {
        boolean redirect =
                page != null && page.getViewName() != null && page.getViewName().startsWith("redirect:");
        if (page != null
                && !redirect
                && page.getModel().values().stream()
                        .anyMatch(value -> value instanceof Errors errors && errors.hasErrors())) {
            page.addObject("invalid", true);
        }
    }
}

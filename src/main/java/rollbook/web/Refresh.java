package rollbook.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.time.Duration;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.env.Environment;
import org.springframework.http.HttpMethod;
import org.springframework.http.HttpStatus;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;
import org.thymeleaf.spring6.view.ThymeleafViewResolver;

/**
 * Pages that are open ask for themselves again now and then. Tells the layout when the page was made ({@code madeAt}),
 * and, if it is one that can be asked for again, how often ({@code refreshMillis}): whatever a GET was answered with
 * that worked out. What a form was answered with has no address of its own.
 */
@Configuration(proxyBeanMethods = false)
public class Refresh implements WebMvcConfigurer, HandlerInterceptor {
    /** The header of a request that no person made but a page that is open. */
    public static final String HEADER = "Rollbook-Refresh";

    private static final String SETTING = "rollbook.refresh-every";

    /** Its value if the page hangs on a wall, where nobody touches it for days. */
    private static final String WALL = "wall";

    private final Clock clock;
    private final long everyMillis;

    @Autowired
    Refresh(Clock clock, Environment environment, ThymeleafViewResolver pages) {
        this.clock = clock;
        this.everyMillis = environment
                .getProperty(SETTING, Duration.class, Duration.ofSeconds(25))
                .toMillis();
        pages.setViewClass(FingerprintedView.class);
    }

    /** Whether the request tells nothing of a person who is there. */
    public static boolean isUnattended(HttpServletRequest request) {
        String by = request.getHeader(HEADER);
        return by != null && !by.equals(WALL);
    }

    @Override
    public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(this);
    }

    @Override
    public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler) {
        request.setAttribute("madeAt", clock.instant());
        return true;
    }

    @Override
    public void postHandle(
            HttpServletRequest request, HttpServletResponse response, Object handler, @Nullable ModelAndView page) {
        if (page != null
                && everyMillis > 0
                && HttpMethod.GET.matches(request.getMethod())
                && page.getStatus() == null
                && response.getStatus() == HttpStatus.OK.value()
                && page.getViewName() != null
                && !page.getViewName().startsWith("redirect:")) {
            page.addObject("refreshMillis", everyMillis);
        }
    }
}

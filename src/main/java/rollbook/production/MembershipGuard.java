package rollbook.production;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.core.MethodParameter;
import org.springframework.http.HttpMethod;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Component;
import org.springframework.web.bind.support.WebDataBinderFactory;
import org.springframework.web.context.request.NativeWebRequest;
import org.springframework.web.context.request.RequestAttributes;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.method.support.HandlerMethodArgumentResolver;
import org.springframework.web.method.support.ModelAndViewContainer;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.HandlerMapping;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;
import rollbook.people.SignedInPerson;
import rollbook.web.NotFoundException;

/**
 * Stands before every page of a production. Who doesn't belong to it gets the same answer as for a production that
 * doesn't exist; who belongs but lacks the role is refused.
 */
@Component
class MembershipGuard implements HandlerInterceptor, HandlerMethodArgumentResolver, WebMvcConfigurer {
    /** The layout, error pages included, reads it under this name to show whose production this is. */
    private static final String ATTRIBUTE = "membership";

    private final Memberships memberships;

    MembershipGuard(Memberships memberships) {
        this.memberships = memberships;
    }

    @Override
    public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler) {
        if (handler instanceof HandlerMethod method) {
            Membership membership = membership(request);
            request.setAttribute(ATTRIBUTE, membership);
            checkRole(membership, method, request.getMethod());
        }
        return true;
    }

    private Membership membership(HttpServletRequest request) {
        @SuppressWarnings("unchecked")
        Map<String, String> variables =
                (Map<String, String>) request.getAttribute(HandlerMapping.URI_TEMPLATE_VARIABLES_ATTRIBUTE);
        Authentication authentication = SecurityContextHolder.getContext().getAuthentication();
        String code = variables.get("production");
        if (code == null
                || authentication == null
                || !(authentication.getPrincipal() instanceof SignedInPerson person)) {
            throw new NotFoundException();
        }
        return memberships.find(person, code).orElseThrow(NotFoundException::new);
    }

    private static void checkRole(Membership membership, HandlerMethod method, String httpMethod) {
        AllowedFor allowed = method.getMethodAnnotation(AllowedFor.class);
        boolean reading = HttpMethod.GET.matches(httpMethod) || HttpMethod.HEAD.matches(httpMethod);
        if (allowed == null ? !reading : !membership.may(allowed.value())) {
            throw new AccessDeniedException("the role does not allow this");
        }
    }

    @Override
    public boolean supportsParameter(MethodParameter parameter) {
        return parameter.getParameterType() == Membership.class;
    }

    @Override
    public @Nullable Object resolveArgument(
            MethodParameter parameter,
            @Nullable ModelAndViewContainer container,
            NativeWebRequest request,
            @Nullable WebDataBinderFactory binders) {
        return request.getAttribute(ATTRIBUTE, RequestAttributes.SCOPE_REQUEST);
    }

    @Override
    public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(this).addPathPatterns("/p/{production}/**", "/p/{production}");
    }

    @Override
    public void addArgumentResolvers(List<HandlerMethodArgumentResolver> resolvers) {
        resolvers.add(this);
    }
}

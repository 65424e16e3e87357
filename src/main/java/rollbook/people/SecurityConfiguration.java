package rollbook.people;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.http.HttpMethod;
import org.springframework.http.HttpStatus;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.crypto.argon2.Argon2PasswordEncoder;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.security.web.AuthenticationEntryPoint;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.authentication.DelegatingAuthenticationEntryPoint;
import org.springframework.security.web.authentication.HttpStatusEntryPoint;
import org.springframework.security.web.authentication.LoginUrlAuthenticationEntryPoint;
import org.springframework.security.web.csrf.CookieCsrfTokenRepository;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;
import org.springframework.security.web.savedrequest.CookieRequestCache;
import org.springframework.security.web.util.matcher.RequestMatcher;
import rollbook.web.Refresh;

@Configuration(proxyBeanMethods = false)
class SecurityConfiguration {
    private static final String CONTENT_SECURITY_POLICY = String.join(
            "; ",
            "default-src 'none'",
            "script-src 'self'",
            "style-src 'self'",
            "img-src 'self' data:",
            "font-src 'self'",
            "connect-src 'self'",
            "form-action 'self'",
            "base-uri 'none'",
            "frame-ancestors 'none'");

    private static final String SIGN_IN = "/sign-in";

    private static final RequestMatcher OPEN_PAGE = request -> request.getHeader(Refresh.HEADER) != null;

    @Bean
    SecurityFilterChain pages(HttpSecurity http) throws Exception {
        http.authorizeHttpRequests(requests -> requests.requestMatchers(
                                SIGN_IN,
                                "/set-up",
                                "/error",
                                "/css/**",
                                "/js/**",
                                "/webjars/**",
                                "/img/**",
                                "/actuator/health/**")
                        .permitAll()
                        // Whoever knows the secret in its address may read a calendar: programs can't sign in.
                        .requestMatchers(HttpMethod.GET, "/calendar/*.ics")
                        .permitAll()
                        .requestMatchers(HttpMethod.HEAD, "/calendar/*.ics")
                        .permitAll()
                        // Whoever has a message may end mail of its kind (RFC 8058): mail programs can't sign in
                        // either.
                        .requestMatchers("/mail/unsubscribe/*")
                        .permitAll()
                        // Whoever was given its address confirms what arrived: receivers have no account.
                        .requestMatchers("/receipt/*")
                        .permitAll()
                        .anyRequest()
                        .authenticated())
                .formLogin(
                        form -> form.loginPage(SIGN_IN).defaultSuccessUrl("/").failureUrl("/sign-in?failed"))
                .logout(logout -> logout.logoutUrl("/sign-out").logoutSuccessUrl("/sign-in?signed-out"))
                // In a cookie, so that visitors who never sign in leave no session behind; likewise the page they
                // wanted.
                .csrf(csrf -> csrf.csrfTokenRepository(new CookieCsrfTokenRepository())
                        .ignoringRequestMatchers("/mail/unsubscribe/*"))
                .requestCache(cache -> cache.requestCache(pagesThatPeopleWanted()))
                .exceptionHandling(refused -> refused.authenticationEntryPoint(signInOrSayThatOneMust()))
                .headers(headers -> headers.contentSecurityPolicy(csp -> csp.policyDirectives(CONTENT_SECURITY_POLICY))
                        .referrerPolicy(referrer -> referrer.policy(ReferrerPolicy.SAME_ORIGIN)));
        return http.build();
    }

    /** Not what a page asks for by itself, in the background or to refresh itself: nobody wants to be led there. */
    private static CookieRequestCache pagesThatPeopleWanted() {
        CookieRequestCache wanted = new CookieRequestCache();
        wanted.setRequestMatcher(request -> {
            String destination = request.getHeader("Sec-Fetch-Dest");
            return HttpMethod.GET.matches(request.getMethod())
                    && !OPEN_PAGE.matches(request)
                    && (destination == null || destination.equals("document"));
        });
        return wanted;
    }

    /** A person is led to sign in; an open page that refreshes itself is told in a word. */
    private static AuthenticationEntryPoint signInOrSayThatOneMust() {
        return DelegatingAuthenticationEntryPoint.builder()
                .addEntryPointFor(new HttpStatusEntryPoint(HttpStatus.UNAUTHORIZED), OPEN_PAGE)
                .defaultEntryPoint(new LoginUrlAuthenticationEntryPoint(SIGN_IN))
                .build();
    }

    /** Argon2id, a memory-hard hash, with the parameters that Spring Security recommends. */
    @Bean
    PasswordEncoder passwordEncoder() {
        return Argon2PasswordEncoder.defaultsForSpringSecurity_v5_8();
    }
}

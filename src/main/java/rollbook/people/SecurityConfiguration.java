package rollbook.people;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.http.HttpMethod;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.crypto.argon2.Argon2PasswordEncoder;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.csrf.CookieCsrfTokenRepository;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;
import org.springframework.security.web.savedrequest.CookieRequestCache;

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

    @Bean
    SecurityFilterChain pages(HttpSecurity http) throws Exception {
        http.authorizeHttpRequests(requests -> requests.requestMatchers(
                                "/sign-in",
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
                .formLogin(form ->
                        form.loginPage("/sign-in").defaultSuccessUrl("/").failureUrl("/sign-in?failed"))
                .logout(logout -> logout.logoutUrl("/sign-out").logoutSuccessUrl("/sign-in?signed-out"))
                // In a cookie, so that visitors who never sign in leave no session behind; likewise the page they
                // wanted.
                .csrf(csrf -> csrf.csrfTokenRepository(new CookieCsrfTokenRepository())
                        .ignoringRequestMatchers("/mail/unsubscribe/*"))
                .requestCache(cache -> cache.requestCache(wantedPages()))
                .headers(headers -> headers.contentSecurityPolicy(csp -> csp.policyDirectives(CONTENT_SECURITY_POLICY))
                        .referrerPolicy(referrer -> referrer.policy(ReferrerPolicy.SAME_ORIGIN)));
        return http.build();
    }

    /** Not what a page asked for in the background: nobody wants to be led there after signing in. */
    private static CookieRequestCache wantedPages() {
        CookieRequestCache wanted = new CookieRequestCache();
        wanted.setRequestMatcher(request -> {
            String destination = request.getHeader("Sec-Fetch-Dest");
            return HttpMethod.GET.matches(request.getMethod())
                    && (destination == null || destination.equals("document"));
        });
        return wanted;
    }

    /** Argon2id, a memory-hard hash, with the parameters that Spring Security recommends. */
    @Bean
    PasswordEncoder passwordEncoder() {
        return Argon2PasswordEncoder.defaultsForSpringSecurity_v5_8();
    }
}

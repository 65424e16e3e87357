package rollbook.web;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Set;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.boot.webmvc.test.autoconfigure.WebMvcTest;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Import;
import org.springframework.context.annotation.Profile;
import org.springframework.dao.CannotAcquireLockException;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.test.context.ActiveProfiles;
import org.springframework.test.context.ContextConfiguration;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;

/** A site of one controller, without database and without security. */
@WebMvcTest
@AutoConfigureMockMvc(addFilters = false)
@ContextConfiguration(classes = SiteTest.Site.class)
@ActiveProfiles("components")
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.TYPE)
@interface SiteTest {
    Instant NOW = Instant.parse("2026-07-14T17:54:00Z");

    // Not a @Configuration, and its pages only in their profile: the scan of the whole application must not find them.
    @Import({
        Display.class,
        ErrorAdvice.class,
        LastResort.class,
        MessagesConfiguration.class,
        Pages.class,
        CurrentPlace.class,
        Refresh.class,
    })
    class Site {
        @Bean
        Clock clock() {
            return Clock.fixed(NOW, ZoneOffset.UTC);
        }
    }

    record Member(String code, String productionName, String personName, ZoneId zone, Set<String> roles) {
        static final Member ADA = new Member("TIDE", "A Long Tide", "Ada Quist", ZoneId.of("Europe/Lisbon"), Set.of());
    }

    @Controller
    @Profile("components")
    class Pages {
        @ModelAttribute
        void page(Model model) {
            model.addAttribute("membership", Member.ADA).addAttribute("instant", NOW.minusSeconds(720));
        }

        @GetMapping("/p/TIDE/rolls")
        String show() {
            return "test/page";
        }

        @PostMapping("/p/TIDE/media")
        ModelAndView refuse() {
            return new ModelAndView("test/page", HttpStatus.UNPROCESSABLE_CONTENT);
        }

        @GetMapping("/p/TIDE/rolls/{number}")
        String roll(@PathVariable int number, @RequestParam String required) {
            throw switch (required) {
                case "unknown" -> new NotFoundException();
                case "crossed" -> new CannotAcquireLockException("deadlock detected");
                case "refused" -> new Refusal("test.refused", "C-014", "A014");
                default -> new IllegalStateException("secret detail");
            };
        }
    }
}

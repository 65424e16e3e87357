package rollbook.web;

import jakarta.validation.Valid;
import jakarta.validation.constraints.AssertTrue;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import java.math.BigInteger;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
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
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** A site of one controller that shows every fragment in every state, without database and without security. */
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

    enum State {
        BLANK,
        IN_CAMERA,
        EXPOSED,
        COPYING,
        HELD,
        CLEAR_TO_ERASE,
        QUARANTINED,
        AWAY
    }

    enum Verdict {
        PROVEN,
        CONSISTENT,
        SIZE_ONLY,
        INCOMPLETE,
        FAILED,
        UNKNOWN
    }

    record Member(String code, String productionName, String personName, ZoneId zone, Set<String> roles) {
        static final Member ADA = new Member("TIDE", "A Long Tide", "Ada Quist", ZoneId.of("Europe/Lisbon"), Set.of());
    }

    record Row(String code, String card, long bytes, List<Verdict> verdicts, State state) {}

    record TestForm(
            @NotBlank String code,
            @Min(1) @Max(100_000) @Nullable Integer capacityGb,
            @Nullable LocalDate arrives,
            @Size(min = 12, max = 200) String secret,
            @Nullable String document,
            @NotBlank String unit,
            State state,
            @Nullable String verdict,
            boolean hired,
            @Nullable String note,
            @Nullable String typed) {
        @AssertTrue(message = "{test.refused}")
        boolean isWhole() {
            return !"whole".equals(note);
        }
    }

    @Controller
    @Profile("components")
    class Pages {
        @ModelAttribute
        void page(Model model) {
            model.addAttribute("membership", Member.ADA)
                    .addAttribute("roll", "A014")
                    .addAttribute("legs", List.of("RAID-01", "SHUTTLE-02", "TAPE-07"))
                    .addAttribute("rows", rows())
                    .addAttribute("total", new BigInteger("4820000000000"))
                    .addAttribute("instant", NOW.minusSeconds(720))
                    .addAttribute("states", State.values())
                    .addAttribute("verdicts", Verdict.values())
                    .addAttribute("words", List.of("proven", "consistent", "size-only"))
                    .addAttribute("units", List.of(new Choice("1", "Main unit"), new Choice("2", "Second unit")))
                    .addAttribute("paged", new Paged<>(rows(), 2, 3, 8))
                    .addAttribute("proven", List.of("212 of 212 files of A014 on RAID-01."))
                    .addAttribute("unproven", List.of())
                    .addAttribute("links", List.of(new Link("/p/TIDE/documents/1", "A014_card.mhl, 14 July")));
        }

        @GetMapping({"/p/TIDE/rolls", "/p/TIDE/media"})
        String show(Model model) {
            model.addAttribute(
                    "testForm",
                    new TestForm(
                            "C-014",
                            960,
                            LocalDate.of(2026, 7, 16),
                            "",
                            null,
                            "2",
                            State.HELD,
                            "proven",
                            true,
                            "",
                            ""));
            return "test/components";
        }

        @PostMapping("/p/TIDE/media")
        Object save(@Valid TestForm form, BindingResult result, RedirectAttributes flash) {
            if (result.hasErrors()) {
                var page = new ModelAndView("test/components");
                page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
                return page;
            }
            flash.addFlashAttribute("notice", Notice.of("test.saved", form.code()));
            return "redirect:/p/TIDE/media";
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

        private static List<Row> rows() {
            var v = Arrays.asList(Verdict.values());
            return List.of(
                    new Row("A014", "C-014", 812_000_000_000L, List.of(v.get(0), v.get(4), v.get(5)), State.HELD),
                    new Row("B009", "C-022", 498_300_000_000L, List.of(v.get(1), v.get(2), v.get(3)), State.EXPOSED),
                    new Row("A013", "C-009", 960_000L, List.of(v.get(0), v.get(0), v.get(0)), State.CLEAR_TO_ERASE));
        }
    }
}

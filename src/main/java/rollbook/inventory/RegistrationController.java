package rollbook.inventory;

import static org.springframework.http.HttpStatus.UNPROCESSABLE_CONTENT;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Pattern;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.Notice;
import rollbook.web.Refusal;

/** Registers one item, or a run of like items whose codes count up. */
@Controller
@RequestMapping("/p/{production}/media")
class RegistrationController {
    private static final Pattern WHOLE = Pattern.compile("\\d{1,6}");

    private final Inventory inventory;
    private final ItemFormPage page;

    RegistrationController(Inventory inventory, ItemFormPage page) {
        this.inventory = inventory;
        this.page = page;
    }

    @GetMapping("/new")
    @AllowedFor(Role.OFFICE)
    String one(Membership membership, Model model) {
        return empty(membership, model, "inventory/new");
    }

    @GetMapping("/run")
    @AllowedFor(Role.OFFICE)
    String run(Membership membership, Model model) {
        return empty(membership, model, "inventory/run");
    }

    private String empty(Membership membership, Model model, String view) {
        ItemFormPage.Words words = page.words(membership);
        page.addChoices(model, words);
        model.addAttribute("itemForm", ItemForm.blank(words.firstPlace()));
        return view;
    }

    @PostMapping("/new")
    @AllowedFor(Role.OFFICE)
    String registerOne(
            Membership membership,
            @ModelAttribute ItemForm form,
            BindingResult result,
            Model model,
            HttpServletResponse response,
            RedirectAttributes flash) {
        ItemFormPage.Words words = page.words(membership);
        ItemReading.Read read = page.read(form.cells(), words, result, Map.of());
        if (!result.hasErrors()) {
            try {
                NewItem item = read.sound();
                UUID id = inventory.register(membership, item);
                flash.addFlashAttribute("notice", Notice.of("inventory.registered", item.code()));
                return "redirect:" + membership.path("media/" + id);
            } catch (Refusal refusal) {
                page.reject(result, "code", refusal);
            }
        }
        return again(response, model, words, "inventory/new");
    }

    @PostMapping("/run")
    @AllowedFor(Role.OFFICE)
    String registerRun(
            Membership membership,
            @ModelAttribute ItemForm form,
            BindingResult result,
            Model model,
            HttpServletResponse response,
            RedirectAttributes flash) {
        ItemFormPage.Words words = page.words(membership);
        Optional<NumberRun> run = run(form, result);
        String firstCode = run.map(NumberRun::codes).map(codes -> codes.get(0)).orElse(form.prefix() + "0");
        ItemReading.Read read = page.read(form.cellsWith(firstCode), words, result, Map.of(Column.CODE, "prefix"));
        if (!result.hasErrors() && run.isPresent()) {
            try {
                inventory.registerRun(membership, read.sound(), run.get());
                List<String> codes = run.get().codes();
                flash.addFlashAttribute(
                        "notice",
                        Notice.of("inventory.registered-run", codes.size(), codes.get(0), codes.get(codes.size() - 1)));
                flash.addFlashAttribute("registered", codes.get(0) + " to " + codes.get(codes.size() - 1));
                return "redirect:" + membership.path("media");
            } catch (Refusal refusal) {
                page.reject(result, "first", refusal);
            }
        }
        return again(response, model, words, "inventory/run");
    }

    private Optional<NumberRun> run(ItemForm form, BindingResult result) {
        Optional<Integer> first = whole("first", form.first(), 0, 999_999, result);
        Optional<Integer> digits = whole("digits", form.digits(), 1, NumberRun.MOST_DIGITS, result);
        Optional<Integer> count = whole("count", form.count(), 1, NumberRun.MOST, result);
        if (first.isEmpty() || digits.isEmpty() || count.isEmpty()) {
            return Optional.empty();
        }
        long last = first.get() + count.get() - 1L;
        if (NumberRun.digitsOf(last) > digits.get()) {
            page.reject(result, "digits", "inventory.problem.digits", List.of(last));
            return Optional.empty();
        }
        String prefix = form.prefix().strip().toUpperCase(Locale.ROOT);
        return Optional.of(new NumberRun(prefix, first.get(), digits.get(), count.get()));
    }

    private Optional<Integer> whole(String field, String text, int least, int most, BindingResult result) {
        String digits = text.strip();
        if (WHOLE.matcher(digits).matches() && Integer.parseInt(digits) >= least && Integer.parseInt(digits) <= most) {
            return Optional.of(Integer.parseInt(digits));
        }
        page.reject(result, field, "inventory.problem.whole", List.of(least, most));
        return Optional.empty();
    }

    private String again(HttpServletResponse response, Model model, ItemFormPage.Words words, String view) {
        response.setStatus(UNPROCESSABLE_CONTENT.value());
        page.addChoices(model, words);
        return view;
    }
}

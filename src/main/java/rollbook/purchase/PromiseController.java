package rollbook.purchase;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.Display;
import rollbook.web.Notice;

/** The supplier now says another date. */
@Controller
@RequestMapping("/p/{production}/orders/{id:[0-9a-fA-F-]{36}}/promise")
class PromiseController {
    private static final int LONGEST_WORDS = 300;

    private final Orders orders;
    private final Display display;

    PromiseController(Orders orders, Display display) {
        this.orders = orders;
        this.display = display;
    }

    /** What the supplier says, as typed. */
    record PromiseForm(String expectedOn, String words, String version) {
        PromiseForm {
            expectedOn = expectedOn == null ? "" : expectedOn.strip();
            words = words == null ? "" : words.strip();
            version = version == null ? "" : version.strip();
        }
    }

    @GetMapping
    @AllowedFor(Role.OFFICE)
    ModelAndView ask(Membership membership, @PathVariable UUID id) {
        PurchaseOrder order = orders.get(membership.productionId(), id);
        return page(HttpStatus.OK, membership, order)
                .addObject("promiseForm", new PromiseForm("", "", Integer.toString(order.version())));
    }

    @PostMapping
    @AllowedFor(Role.OFFICE)
    ModelAndView promise(
            Membership membership,
            @PathVariable UUID id,
            @ModelAttribute PromiseForm form,
            BindingResult result,
            RedirectAttributes flash) {
        PurchaseOrder order = orders.get(membership.productionId(), id);
        TypedFields fields = new TypedFields(result);
        LocalDate date = fields.date("expectedOn", form.expectedOn()).orElse(null);
        LocalDate orderedOn = order.orderedOn();
        if (date != null && orderedOn != null && date.isBefore(orderedOn)) {
            fields.wrong("expectedOn", "purchase.promise.past");
        }
        fields.atMost("words", form.words(), LONGEST_WORDS);
        if (date == null || !fields.isSound()) {
            return page(HttpStatus.UNPROCESSABLE_CONTENT, membership, order);
        }
        orders.promise(membership, id, date, form.words(), TypedFields.version(form.version()));
        flash.addFlashAttribute("notice", Notice.of("purchase.promise.done", order.number(), display.date(date)));
        return new ModelAndView("redirect:" + membership.path("orders/" + id));
    }

    private ModelAndView page(HttpStatus status, Membership membership, PurchaseOrder order) {
        return new ModelAndView("purchase/promise", status)
                .addObject("order", order)
                .addObject("base", membership.path("orders/" + order.id()))
                .addObject("sentence", sentence(order.expectedOn()));
    }

    private @Nullable String sentence(@Nullable LocalDate expectedOn) {
        return expectedOn == null ? null : display.text("purchase.promise.sentence", display.date(expectedOn));
    }
}

package rollbook.purchase;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.validation.Valid;
import java.util.Objects;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.CopyPlan;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.quantity.Money;
import rollbook.supplier.DeliveredTo;
import rollbook.web.Notice;

/** The form of an order: proposing one, and changing one that is proposed. */
@Controller
@RequestMapping("/p/{production}/orders")
class OrderFormController {
    private static final int MOST_LINES = 30;
    private static final Pattern LINE = Pattern.compile("lines\\[(\\d{1,3})]\\..+");

    private final Orders orders;
    private final OrderFormPages pages;
    private final CopyPlan plan;

    OrderFormController(Orders orders, OrderFormPages pages, CopyPlan plan) {
        this.orders = orders;
        this.pages = pages;
        this.plan = plan;
    }

    @GetMapping("/new")
    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    ModelAndView blank(Membership membership, @RequestParam @Nullable UUID leg, @RequestParam @Nullable UUID item) {
        OrderForm form = pages.beginning(membership, leg, item);
        return page(membership, null, form, form.lines().size(), HttpStatus.OK);
    }

    @PostMapping("/new")
    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    ModelAndView propose(
            Membership membership,
            @RequestParam(defaultValue = "false") boolean more,
            @Valid OrderForm orderForm,
            BindingResult result,
            HttpServletRequest request,
            RedirectAttributes flash) {
        return save(membership, null, more, orderForm, result, request, flash);
    }

    @GetMapping("/{id}/edit")
    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    ModelAndView edit(Membership membership, @PathVariable UUID id) {
        PurchaseOrder order = orders.get(membership.productionId(), id);
        OrderForm form = OrderForm.of(order, Money.of(membership.currency()));
        return page(membership, order, form, form.lines().size(), HttpStatus.OK);
    }

    @PostMapping("/{id}/edit")
    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    ModelAndView change(
            Membership membership,
            @PathVariable UUID id,
            @RequestParam(defaultValue = "false") boolean more,
            @Valid OrderForm orderForm,
            BindingResult result,
            HttpServletRequest request,
            RedirectAttributes flash) {
        PurchaseOrder order = orders.get(membership.productionId(), id);
        return save(membership, order, more, orderForm, result, request, flash);
    }

    private ModelAndView save(
            Membership membership,
            @Nullable PurchaseOrder kept,
            boolean more,
            @Nullable OrderForm form,
            BindingResult result,
            HttpServletRequest request,
            RedirectAttributes flash) {
        int lines = lines(request);
        if (form != null && more) {
            boolean room = lines < MOST_LINES;
            return page(membership, kept, room ? form.longer() : form, room ? lines + 1 : lines, HttpStatus.OK);
        }
        Money money = Money.of(membership.currency());
        if (!result.hasErrors()) {
            pages.choices(membership, kept).checks().look(Objects.requireNonNull(form), result);
        }
        if (result.hasErrors()) {
            ModelAndView page = page(membership, kept, form, lines, HttpStatus.UNPROCESSABLE_CONTENT);
            page.addAllObjects(result.getModel());
            return page;
        }
        UUID id = kept == null ? null : kept.id();
        if (id == null) {
            id = orders.propose(membership, form.order(null, flagName(membership, form), money));
        } else {
            orders.change(membership, id, form.order(kept, "", money), form.version());
        }
        PurchaseOrder saved = orders.get(membership.productionId(), id);
        flash.addFlashAttribute(
                "notice",
                Notice.of(kept == null ? "purchase.proposed" : "purchase.saved", Integer.toString(saved.number())));
        return new ModelAndView("redirect:" + membership.path("orders/" + id));
    }

    private String flagName(Membership membership, OrderForm form) {
        return form.flag() == null
                ? ""
                : plan.leg(membership.productionId(), form.flag()).name();
    }

    /** How many lines were sent, also of a form that couldn't be read. */
    private static int lines(HttpServletRequest request) {
        return request.getParameterMap().keySet().stream()
                .map(LINE::matcher)
                .filter(Matcher::matches)
                .mapToInt(line -> Integer.parseInt(line.group(1)) + 1)
                .filter(count -> count <= MOST_LINES)
                .max()
                .orElse(1);
    }

    private ModelAndView page(
            Membership membership,
            @Nullable PurchaseOrder kept,
            @Nullable OrderForm form,
            int lines,
            HttpStatus status) {
        boolean flagged = form != null && form.flag() != null;
        ModelAndView page = new ModelAndView("purchase/edit", status)
                .addObject("sentence", pages.sentence(membership, flagged ? form.flag() : null))
                .addObject("destinations", DeliveredTo.values())
                .addObject(
                        "back", membership.path(kept != null ? "orders/" + kept.id() : flagged ? "storage" : "orders"))
                .addObject("kept", kept)
                .addObject("rows", lines)
                .addObject("choices", pages.choices(membership, kept));
        if (form != null) {
            page.addObject("orderForm", form);
        }
        return page;
    }
}

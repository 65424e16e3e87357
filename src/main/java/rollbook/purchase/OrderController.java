package rollbook.purchase;

import jakarta.validation.Valid;
import java.time.LocalDate;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
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
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.purchase.PurchaseOrder.State;
import rollbook.web.Notice;

/** The orders of a production, and what is done with one. */
@Controller
@RequestMapping("/p/{production}/orders")
class OrderController {
    private final Orders orders;
    private final Receipts receipts;
    private final OrderListPages lists;
    private final OrderPages pages;
    private final OrderPapers papers;
    private final OrderLetters letters;

    OrderController(
            Orders orders,
            Receipts receipts,
            OrderListPages lists,
            OrderPages pages,
            OrderPapers papers,
            OrderLetters letters) {
        this.orders = orders;
        this.receipts = receipts;
        this.lists = lists;
        this.pages = pages;
        this.papers = papers;
        this.letters = letters;
    }

    @GetMapping
    ModelAndView list(Membership membership, @RequestParam Map<String, String> address) {
        return new ModelAndView("purchase/list").addObject("page", lists.page(membership, address));
    }

    @GetMapping("/{id:[0-9a-fA-F-]{36}}")
    ModelAndView one(Membership membership, @PathVariable UUID id) {
        return page(membership, id, null);
    }

    @PostMapping("/{id}/approval")
    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    ModelAndView approve(
            Membership membership,
            @PathVariable UUID id,
            @RequestParam(defaultValue = "-1") int version,
            RedirectAttributes flash) {
        orders.approve(membership, id, version);
        return done(membership, id, "purchase.approved", flash);
    }

    @PostMapping("/{id}/decline")
    @AllowedFor(Role.OFFICE)
    ModelAndView decline(
            Membership membership,
            @PathVariable UUID id,
            @Valid DeclineForm declineForm,
            BindingResult result,
            RedirectAttributes flash) {
        if (result.hasErrors()) {
            return page(membership, id, result);
        }
        orders.decline(membership, id, declineForm.declineReason(), declineForm.version());
        return done(membership, id, "purchase.declined", flash);
    }

    @PostMapping("/{id}/placing")
    @AllowedFor(Role.OFFICE)
    ModelAndView place(
            Membership membership,
            @PathVariable UUID id,
            @Valid PlaceForm placeForm,
            BindingResult result,
            RedirectAttributes flash) {
        if (!result.hasErrors()) {
            LocalDate on = Objects.requireNonNull(placeForm.orderedOn());
            if (on.isAfter(pages.today(membership))) {
                result.rejectValue("orderedOn", "purchase.place.later");
            } else if (Objects.requireNonNull(placeForm.expectedOn()).isBefore(on)) {
                result.rejectValue("expectedOn", "purchase.place.before");
            }
        }
        if (result.hasErrors()) {
            return page(membership, id, result);
        }
        orders.place(
                membership,
                id,
                Objects.requireNonNull(placeForm.orderedOn()),
                Objects.requireNonNull(placeForm.expectedOn()),
                placeForm.version());
        return done(membership, id, "purchase.placed", flash);
    }

    @PostMapping("/{id}/cancellation")
    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    ModelAndView cancel(
            Membership membership,
            @PathVariable UUID id,
            @Valid CancelForm cancelForm,
            BindingResult result,
            RedirectAttributes flash) {
        if (result.hasErrors()) {
            return page(membership, id, result);
        }
        orders.cancel(membership, id, cancelForm.cancelReason(), cancelForm.version());
        return done(membership, id, "purchase.cancelled", flash);
    }

    @PostMapping("/{id}/closing")
    @AllowedFor(Role.OFFICE)
    ModelAndView close(
            Membership membership,
            @PathVariable UUID id,
            @RequestParam(defaultValue = "-1") int version,
            RedirectAttributes flash) {
        orders.close(membership, id, version);
        return done(membership, id, "purchase.closed", flash);
    }

    @PostMapping("/{id}/correction")
    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    ModelAndView takeBack(
            Membership membership,
            @PathVariable UUID id,
            @RequestParam(defaultValue = "-1") int number,
            @RequestParam(defaultValue = "-1") int version,
            RedirectAttributes flash) {
        orders.takeBack(membership, id, number, version);
        return done(membership, id, "purchase.taken-back", flash);
    }

    private ModelAndView done(Membership membership, UUID id, String key, RedirectAttributes flash) {
        PurchaseOrder order = orders.get(membership.productionId(), id);
        flash.addFlashAttribute("notice", Notice.of(key, Integer.toString(order.number())));
        return new ModelAndView("redirect:" + membership.path("orders/" + id));
    }

    /** @param wrong what was wrong with one of its forms; null for none */
    private ModelAndView page(Membership membership, UUID id, @Nullable BindingResult wrong) {
        PurchaseOrder order = orders.get(membership.productionId(), id);
        OrderPaper paper = papers.of(membership, order);
        ModelAndView page = new ModelAndView(
                        "purchase/one", wrong == null ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT)
                .addObject("page", pages.one(membership, order))
                .addObject("declineForm", new DeclineForm("", order.version()))
                .addObject("cancelForm", new CancelForm("", order.version()))
                .addObject("order", order)
                .addObject("base", membership.path("orders/" + id))
                .addObject("receipts", receipts.list(order))
                .addObject("paper", paper)
                .addObject("mailHref", letters.address(membership, paper));
        if (order.state() == State.APPROVED && membership.mayKeepBooks()) {
            page.addObject("placeForm", pages.placeForm(membership, order));
        }
        if (wrong != null) {
            page.addAllObjects(wrong.getModel());
            page.addObject("wrongForm", wrong.getObjectName());
        }
        return page;
    }
}

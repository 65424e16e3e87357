package rollbook.forecast;

import jakarta.validation.Valid;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.ordering.OrderAdvice;
import rollbook.production.AllowedFor;
import rollbook.production.CopyPlan;
import rollbook.production.Leg;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.supplier.Catalogue;
import rollbook.web.Display;
import rollbook.web.Notice;

/** Media on order: what was ordered, what came, what was called off. */
@Controller
class OrderController {
    private static final int GB_DIGITS = 9;

    private final MediaOrders orders;
    private final ForecastRuns runs;
    private final Supplies supplies;
    private final CopyPlan plan;
    private final Catalogue catalogue;
    private final Display display;
    private final Clock clock;

    OrderController(
            MediaOrders orders,
            ForecastRuns runs,
            Supplies supplies,
            CopyPlan plan,
            Catalogue catalogue,
            Display display,
            Clock clock) {
        this.orders = orders;
        this.runs = runs;
        this.supplies = supplies;
        this.plan = plan;
        this.catalogue = catalogue;
        this.display = display;
        this.clock = clock;
    }

    @GetMapping("/p/{production}/storage/order/{legId}")
    @AllowedFor(Role.OFFICE)
    String order(Membership membership, @PathVariable UUID legId, Model model) {
        Leg leg = plan.leg(membership.productionId(), legId);
        model.addAttribute("leg", leg);
        model.addAttribute("orderForm", likely(membership, legId));
        return "forecast/order";
    }

    /** What the forecast advises, as if it were ordered today. */
    private OrderForm likely(Membership membership, UUID legId) {
        LocalDate today = today(membership);
        OrderAdvice advice = Optional.ofNullable(
                        runs.standing(membership.productionId()).newest())
                .stream()
                .flatMap(run -> run.results().legs().stream())
                .filter(leg -> leg.legId().equals(legId))
                .findFirst()
                .map(LegForecast::advice)
                .orElse(null);
        OrderAdvice.Order order = advice == null ? null : advice.order();
        BigDecimal capacityGb = supplies.find(membership.productionId(), legId)
                .map(supply -> catalogue
                        .get(membership.productionId(), supply.itemId())
                        .details()
                        .capacityBytes())
                .map(bytes -> BigDecimal.valueOf(bytes).movePointLeft(GB_DIGITS))
                .map(OrderController::plain)
                .orElse(null);
        return new OrderForm(
                order == null ? null : Math.toIntExact(order.items()),
                capacityGb,
                today,
                order == null ? null : advice.waiting().get(0).likelyArrivalOn(),
                "");
    }

    private static BigDecimal plain(BigDecimal number) {
        BigDecimal stripped = number.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }

    @PostMapping("/p/{production}/storage/order/{legId}")
    @AllowedFor(Role.OFFICE)
    ModelAndView enter(
            Membership membership,
            @PathVariable UUID legId,
            @Valid OrderForm orderForm,
            BindingResult wrong,
            RedirectAttributes flash) {
        Leg leg = plan.leg(membership.productionId(), legId);
        if (!wrong.hasErrors() && orderForm.isExpectedBeforeItIsOrdered()) {
            wrong.rejectValue("expectedOn", "forecast.order-form.expected.before");
        }
        if (wrong.hasErrors()) {
            return again("forecast/order", wrong).addObject("leg", leg);
        }
        orders.enter(membership, orderForm.order(legId));
        flash.addFlashAttribute("notice", Notice.of("forecast.order-form.saved", orderForm.items(), leg.name()));
        return new ModelAndView("redirect:" + membership.path("storage"));
    }

    @GetMapping("/p/{production}/storage/orders/{orderId}")
    @AllowedFor(Role.OFFICE)
    ModelAndView show(Membership membership, @PathVariable UUID orderId) {
        MediaOrder order = orders.get(membership.productionId(), orderId);
        return page(order, HttpStatus.OK)
                .addObject("receiptForm", new ReceiptForm(Math.max(1, order.left()), today(membership), order.steps()));
    }

    @PostMapping("/p/{production}/storage/orders/{orderId}/receipt")
    @AllowedFor(Role.OFFICE)
    ModelAndView receive(
            Membership membership,
            @PathVariable UUID orderId,
            @Valid ReceiptForm receiptForm,
            BindingResult wrong,
            RedirectAttributes flash) {
        MediaOrder order = orders.get(membership.productionId(), orderId);
        LocalDate cameOn = receiptForm.cameOn();
        if (!wrong.hasErrors() && cameOn.isBefore(order.orderedOn())) {
            wrong.rejectValue("cameOn", "forecast.receipt.cameOn.before");
        }
        if (!wrong.hasErrors() && cameOn.isAfter(today(membership))) {
            wrong.rejectValue("cameOn", "forecast.receipt.cameOn.after");
        }
        if (wrong.hasErrors()) {
            return page(order, HttpStatus.UNPROCESSABLE_CONTENT);
        }
        orders.receive(membership, orderId, receiptForm.items(), cameOn, receiptForm.steps());
        flash.addFlashAttribute("notice", Notice.of("forecast.receipt.saved", receiptForm.items(), order.legName()));
        return new ModelAndView("redirect:" + membership.path("storage"));
    }

    @PostMapping("/p/{production}/storage/orders/{orderId}/correction")
    @AllowedFor(Role.OFFICE)
    String takeBack(
            Membership membership,
            @PathVariable UUID orderId,
            @RequestParam(defaultValue = "-1") int number,
            @RequestParam(defaultValue = "-1") int steps,
            RedirectAttributes flash) {
        orders.takeBack(membership, orderId, number, steps);
        flash.addFlashAttribute("notice", Notice.of("forecast.receipt.taken-back"));
        return "redirect:" + membership.path("storage/orders/" + orderId);
    }

    @PostMapping("/p/{production}/storage/orders/{orderId}/cancellation")
    @AllowedFor(Role.OFFICE)
    String cancel(
            Membership membership,
            @PathVariable UUID orderId,
            @RequestParam(defaultValue = "-1") int steps,
            RedirectAttributes flash) {
        MediaOrder order = orders.get(membership.productionId(), orderId);
        orders.cancel(membership, orderId, steps);
        flash.addFlashAttribute("notice", Notice.of("forecast.order-form.cancelled", order.legName()));
        return "redirect:" + membership.path("storage");
    }

    private LocalDate today(Membership membership) {
        return LocalDate.ofInstant(clock.instant(), membership.zone());
    }

    private ModelAndView page(MediaOrder order, HttpStatus status) {
        return new ModelAndView("forecast/on-order", status)
                .addObject("order", order)
                .addObject("recorded", orders.steps(order))
                .addObject("sentence", sentence(order));
    }

    private String sentence(MediaOrder order) {
        return order.isOpen()
                ? display.text("forecast.receipt.open", order.left())
                : display.text(order.cancelled() ? "forecast.receipt.cancelled" : "forecast.receipt.complete");
    }

    private static ModelAndView again(String view, BindingResult wrong) {
        ModelAndView page = new ModelAndView(view, wrong.getModel());
        page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        return page;
    }
}

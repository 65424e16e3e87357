package rollbook.purchase;

import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
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
import rollbook.production.Place;
import rollbook.production.Places;
import rollbook.production.Role;
import rollbook.web.Choice;
import rollbook.web.Display;
import rollbook.web.NotFoundException;
import rollbook.web.Notice;
import rollbook.web.Refusal;

/** Enters what came of an order: serial numbers scanned or typed, what was broken, what was something else. */
@Controller
@RequestMapping("/p/{production}/orders/{id:[0-9a-fA-F-]{36}}/receive")
class ReceiveController {
    private final Orders orders;
    private final Receipts receipts;
    private final ReceiptReading reading;
    private final Places places;
    private final Display display;
    private final Clock clock;

    ReceiveController(
            Orders orders, Receipts receipts, ReceiptReading reading, Places places, Display display, Clock clock) {
        this.orders = orders;
        this.receipts = receipts;
        this.reading = reading;
        this.places = places;
        this.display = display;
        this.clock = clock;
    }

    /**
     * A line of the order on the form.
     *
     * @param title what it is
     * @param left how many are still to come
     * @param asksCapacity whether the order doesn't say how much an item holds
     * @param tellsOfFaults whether something was typed about broken or wrong items
     */
    record Line(String title, String left, boolean asksCapacity, boolean tellsOfFaults) {}

    @GetMapping
    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    ModelAndView blank(Membership membership, @PathVariable UUID id) {
        PurchaseOrder order = orders.get(membership.productionId(), id);
        List<Place> known = places.list(membership.productionId());
        LocalDate today = LocalDate.now(clock.withZone(membership.zone()));
        return page(
                membership,
                HttpStatus.OK,
                order,
                ReceiptForm.blank(order, today.toString(), usualPlace(order, known)),
                known);
    }

    /** The place with the name of where it is delivered to, else the first one. */
    private String usualPlace(PurchaseOrder order, List<Place> known) {
        String name = display.text("supplier.delivered-to." + order.deliveredTo());
        return known.stream()
                .filter(place -> place.name().equalsIgnoreCase(name))
                .findFirst()
                .or(() -> known.stream().findFirst())
                .map(place -> place.id().toString())
                .orElse("");
    }

    @PostMapping
    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    ModelAndView receive(
            Membership membership,
            @PathVariable UUID id,
            @ModelAttribute ReceiptForm form,
            BindingResult result,
            RedirectAttributes flash) {
        PurchaseOrder order = orders.get(membership.productionId(), id);
        Optional<Receipt> same = receipts.list(order).stream()
                .filter(receipt -> receipt.id().toString().equals(form.receipt()))
                .findFirst();
        if (same.isPresent()) {
            return kept(membership, order, same.get().id(), flash);
        }
        Optional<NewReceipt> read = reading.read(membership, order, form, result);
        if (read.isPresent()) {
            try {
                receipts.receive(membership, id, read.get(), TypedFields.version(form.version()));
                return kept(membership, order, read.get().id(), flash);
            } catch (Refusal refusal) {
                String next = display.next(refusal);
                result.reject("refused", display.text(refusal) + (next == null ? "" : " " + next));
            }
        }
        return page(
                membership,
                HttpStatus.UNPROCESSABLE_CONTENT,
                orders.get(membership.productionId(), id),
                form,
                places.list(membership.productionId()));
    }

    private static ModelAndView kept(
            Membership membership, PurchaseOrder order, UUID receiptId, RedirectAttributes flash) {
        flash.addFlashAttribute("notice", Notice.of("purchase.received", order.number()));
        return new ModelAndView("redirect:" + membership.path("orders/" + order.id() + "/receipts/" + receiptId));
    }

    private ModelAndView page(
            Membership membership, HttpStatus status, PurchaseOrder order, ReceiptForm form, List<Place> known) {
        return new ModelAndView("purchase/receive", status)
                .addObject("receiptForm", form)
                .addObject("order", order)
                .addObject("base", membership.path("orders/" + order.id()))
                .addObject("takes", order.takesReceipts() && !form.lines().isEmpty())
                .addObject("sentence", display.text("purchase.receive.sentence", order.left(), order.supplierName()))
                .addObject(
                        "lines",
                        form.lines().stream().map(typed -> line(order, typed)).toList())
                .addObject("remedies", Fault.Remedy.values())
                .addObject(
                        "places",
                        known.stream()
                                .map(place -> new Choice(place.id().toString(), place.name()))
                                .toList());
    }

    private Line line(PurchaseOrder order, ReceiptForm.Line typed) {
        OrderLine line = order.lines().stream()
                .filter(candidate -> candidate.id().toString().equals(typed.line()))
                .findFirst()
                .orElseThrow(NotFoundException::new);
        String kind = display.text("inventory.kind." + line.kind());
        return new Line(
                display.text("purchase.receive.line", line.model(), kind),
                display.text("purchase.receive.left", line.left(), line.items()),
                line.capacityBytes() == null && line.kind().hasCapacity(),
                typed.tellsOfFaults());
    }
}

package rollbook.shipment;

import jakarta.validation.Valid;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.Notice;

/** A shipment that hasn't arrived: expected anew, or lost. What was on it is asked first. */
@Controller
@RequestMapping("/p/{production}/shipments/{id}")
class TroubleController {
    private static final LocalTime USUAL_ARRIVAL = LocalTime.of(18, 0);

    private final Shipments shipments;
    private final Sending sending;
    private final Losses losses;
    private final FormReading reading;
    private final ShipmentPages pages;
    private final Clock clock;

    TroubleController(
            Shipments shipments,
            Sending sending,
            Losses losses,
            FormReading reading,
            ShipmentPages pages,
            Clock clock) {
        this.shipments = shipments;
        this.sending = sending;
        this.losses = losses;
        this.reading = reading;
        this.pages = pages;
        this.clock = clock;
    }

    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    @GetMapping("/expected")
    ModelAndView askWhen(Membership membership, @PathVariable UUID id) {
        Shipment shipment = shipments.underWay(membership.productionId(), id);
        LocalDate tomorrow =
                LocalDate.ofInstant(clock.instant(), membership.zone()).plusDays(1);
        return expected(shipment, HttpStatus.OK)
                .addObject("expectedForm", new ExpectedForm(tomorrow.atTime(USUAL_ARRIVAL), "", shipment.version()));
    }

    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    @PostMapping("/expected")
    ModelAndView expectAnew(
            Membership membership,
            @PathVariable UUID id,
            @Valid @ModelAttribute ExpectedForm form,
            BindingResult result,
            RedirectAttributes flash) {
        Shipment shipment = shipments.underWay(membership.productionId(), id);
        @Nullable Instant expected = reading.expected(membership, form.expectedBy(), result);
        if (result.hasErrors() || expected == null) {
            return expected(shipment, HttpStatus.UNPROCESSABLE_CONTENT);
        }
        sending.expectAnew(membership, id, expected, form.note(), form.version());
        flash.addFlashAttribute("notice", Notice.of("shipment.expected-anew", shipment.number()));
        return new ModelAndView("redirect:" + membership.path("shipments/" + id));
    }

    /** @param items those that may be lost; all that are under way, if none are given */
    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    @GetMapping("/lost")
    ModelAndView askWhat(
            Membership membership, @PathVariable UUID id, @RequestParam(defaultValue = "") Set<UUID> items) {
        Shipment shipment = shipments.underWay(membership.productionId(), id);
        List<ShipmentItem> open = shipments.open(membership.productionId(), id);
        Set<UUID> chosen = open.stream()
                .map(ShipmentItem::itemId)
                .filter(item -> items.isEmpty() || items.contains(item))
                .collect(Collectors.toSet());
        return lost(membership, shipment, open, chosen, HttpStatus.OK)
                .addObject("lossForm", new LossForm(chosen, "", "", shipment.version()));
    }

    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    @PostMapping("/lost")
    ModelAndView report(
            Membership membership,
            @PathVariable UUID id,
            @Valid @ModelAttribute LossForm form,
            BindingResult result,
            RedirectAttributes flash) {
        Shipment shipment = shipments.underWay(membership.productionId(), id);
        if (!form.typed().equals(String.valueOf(shipment.number()))) {
            FormReading.reject(result, "typed", "shipment.problem.number", shipment.number());
        }
        if (result.hasErrors()) {
            return lost(
                    membership,
                    shipment,
                    shipments.open(membership.productionId(), id),
                    form.items(),
                    HttpStatus.UNPROCESSABLE_CONTENT);
        }
        losses.report(membership, id, form.items(), form.reason(), form.version());
        flash.addFlashAttribute(
                "notice", Notice.of("shipment.lost", form.items().size()));
        return new ModelAndView("redirect:" + membership.path("shipments/" + id));
    }

    private static ModelAndView expected(Shipment shipment, HttpStatus status) {
        return new ModelAndView("shipment/expected", status).addObject("shipment", shipment);
    }

    private ModelAndView lost(
            Membership membership, Shipment shipment, List<ShipmentItem> open, Set<UUID> chosen, HttpStatus status) {
        Map<LossLine, String> lines = pages.lines(membership.productionId(), chosen);
        return new ModelAndView("shipment/lost", status)
                .addObject("shipment", shipment)
                .addObject("open", open)
                .addObject("lines", LossTable.of(lines))
                .addObject("sentence", pages.lossSentence(lines));
    }
}

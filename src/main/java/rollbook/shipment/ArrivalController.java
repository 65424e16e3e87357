package rollbook.shipment;

import jakarta.servlet.http.HttpServletRequest;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
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
import rollbook.web.Display;
import rollbook.web.Notice;
import rollbook.web.PortalAddress;
import rollbook.web.Refusal;
import rollbook.web.Secret;

/** Confirms arrivals for those who are signed in, and makes addresses at which others confirm. */
@Controller
@RequestMapping("/p/{production}/shipments/{id}")
class ArrivalController {
    private final Shipments shipments;
    private final Arrivals arrivals;
    private final ReceiptLinks links;
    private final LinkPage linkPage;
    private final PortalAddress address;
    private final Display display;

    ArrivalController(
            Shipments shipments,
            Arrivals arrivals,
            ReceiptLinks links,
            LinkPage linkPage,
            PortalAddress address,
            Display display) {
        this.shipments = shipments;
        this.arrivals = arrivals;
        this.links = links;
        this.linkPage = linkPage;
        this.address = address;
        this.display = display;
    }

    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    @GetMapping("/receive")
    ModelAndView ask(Membership membership, @PathVariable UUID id) {
        Shipment shipment = shipments.underWay(membership.productionId(), id);
        return page(shipment, ReceiptForm.blank(shipments.open(membership.productionId(), id)), HttpStatus.OK);
    }

    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    @PostMapping("/receive")
    ModelAndView confirm(
            Membership membership, @PathVariable UUID id, HttpServletRequest request, RedirectAttributes flash) {
        Shipment shipment = shipments.underWay(membership.productionId(), id);
        ReceiptForm form =
                ReceiptForm.read(shipments.open(membership.productionId(), id), request::getParameter, false);
        if (form.isWrong()) {
            return page(shipment, form, HttpStatus.UNPROCESSABLE_CONTENT);
        }
        arrivals.confirm(membership, id, form.arrivals());
        flash.addFlashAttribute("notice", Notice.of("shipment.received", shipment.number()));
        return new ModelAndView("redirect:" + membership.path("shipments/" + id));
    }

    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    @PostMapping("/not-arrived")
    String takeBack(
            Membership membership,
            @PathVariable UUID id,
            @RequestParam UUID item,
            @RequestParam(defaultValue = "") String reason,
            RedirectAttributes flash) {
        if (reason.isBlank() || reason.length() > 200) {
            throw new Refusal("shipment.refused.no-reason");
        }
        arrivals.takeBack(membership, id, item, reason.strip());
        flash.addFlashAttribute("notice", Notice.of("shipment.not-arrived"));
        return "redirect:" + membership.path("shipments/" + id);
    }

    /** Answers with the address itself rather than with a redirect, so that it is kept nowhere, not even in a session. */
    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    @PostMapping("/link")
    ModelAndView link(Membership membership, @PathVariable UUID id, HttpServletRequest request) {
        Secret secret = links.make(membership, id);
        return linkPage.of(membership, shipments.get(membership.productionId(), id), secret, address.base(request));
    }

    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    @PostMapping("/link/revoke")
    String revoke(Membership membership, @PathVariable UUID id, RedirectAttributes flash) {
        links.revoke(membership, id);
        flash.addFlashAttribute("notice", Notice.of("shipment.link.revoked"));
        return "redirect:" + membership.path("shipments/" + id);
    }

    private ModelAndView page(Shipment shipment, ReceiptForm form, HttpStatus status) {
        return new ModelAndView("shipment/receive", status)
                .addObject("shipment", shipment)
                .addObject("receipt", form)
                .addObject("invalid", form.isWrong())
                .addObject(
                        "sentence",
                        display.text(
                                "shipment.receive.sentence",
                                form.lines().size(),
                                shipment.fromPlaceName(),
                                shipment.toPlaceName()));
    }
}

package rollbook.shipment;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;
import rollbook.web.Display;
import rollbook.web.NotFoundException;
import rollbook.web.Secret;

/**
 * Confirms for a receiver without an account, who was given the address. It shows what the receiver has in hand anyway: the
 * shipment's number, the codes on the items, and the seals.
 */
@Controller
class OpenReceiptController {
    private final ReceiptLinks links;
    private final Shipments shipments;
    private final Display display;

    OpenReceiptController(ReceiptLinks links, Shipments shipments, Display display) {
        this.links = links;
        this.shipments = shipments;
        this.display = display;
    }

    @GetMapping("/receipt/{secret}")
    ModelAndView ask(@PathVariable String secret, HttpServletResponse response) {
        ReceiptLink link = link(secret);
        return link.isUsed()
                ? served(link, response)
                : page(link, ReceiptForm.blank(open(link)), HttpStatus.OK, response);
    }

    @PostMapping("/receipt/{secret}")
    ModelAndView confirm(@PathVariable String secret, HttpServletRequest request, HttpServletResponse response) {
        ReceiptLink link = link(secret);
        if (link.isUsed()) {
            return served(link, response);
        }
        ReceiptForm form = ReceiptForm.read(open(link), request::getParameter, true);
        if (form.isWrong()) {
            return page(link, form, HttpStatus.UNPROCESSABLE_CONTENT, response);
        }
        links.confirm(Secret.of(secret), form.name(), form.arrivals());
        return served(link(secret), response);
    }

    /** One that never was, was revoked, or has expired is not found, all alike. */
    private ReceiptLink link(String secret) {
        return links.of(Secret.of(secret)).orElseThrow(NotFoundException::new);
    }

    private List<ShipmentItem> open(ReceiptLink link) {
        return shipments.items(link.productionId(), link.shipmentId()).stream()
                .filter(ShipmentItem::isOpen)
                .toList();
    }

    private ModelAndView page(ReceiptLink link, ReceiptForm form, HttpStatus status, HttpServletResponse response) {
        keepNowhere(response);
        Shipment shipment = shipments.get(link.productionId(), link.shipmentId());
        return new ModelAndView("shipment/receipt", status)
                .addObject("shipment", shipment)
                .addObject("receipt", form)
                .addObject("invalid", form.isWrong())
                .addObject(
                        "sentence",
                        display.text("shipment.receipt.sentence", form.lines().size(), shipment.number()));
    }

    private ModelAndView served(ReceiptLink link, HttpServletResponse response) {
        keepNowhere(response);
        int number = shipments.get(link.productionId(), link.shipmentId()).number();
        return new ModelAndView("shipment/received")
                .addObject("number", number)
                .addObject(
                        "sentence", display.text("shipment.receipt.served", number, String.valueOf(link.usedByName())));
    }

    private static void keepNowhere(HttpServletResponse response) {
        response.setHeader(HttpHeaders.CACHE_CONTROL, CacheControl.noStore().getHeaderValue());
    }
}

package rollbook.shipment;

import java.time.Clock;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.util.UriComponentsBuilder;
import rollbook.label.QrSymbol;
import rollbook.production.Membership;
import rollbook.web.Display;
import rollbook.web.PortalAddress;
import rollbook.web.Secret;

/** Shows a new address once: as a link, as a QR code for the receiver's phone, and as a mail to send. */
@Component
class LinkPage {
    private final Shipments shipments;
    private final Display display;
    private final Clock clock;

    LinkPage(Shipments shipments, Display display, Clock clock) {
        this.shipments = shipments;
        this.display = display;
        this.clock = clock;
    }

    ModelAndView of(Membership membership, Shipment shipment, Secret secret, String base) {
        String address = base + "/receipt/" + secret.text();
        String until = display.moment(clock.instant().plus(ReceiptLinks.VALID_FOR), membership.zone());
        String subject = display.text("shipment.link.mail.subject", shipment.number(), membership.productionName());
        String codes = String.join(
                "\n",
                shipments.items(membership.productionId(), shipment.id()).stream()
                        .filter(ShipmentItem::isOpen)
                        .map(ShipmentItem::code)
                        .toList());
        String body = display.text(
                "shipment.link.mail.body", shipment.number(), codes, address, until, membership.personName());
        return new ModelAndView("shipment/link")
                .addObject("shipment", shipment)
                .addObject("address", address)
                .addObject("symbol", QrSymbol.of(address))
                .addObject("until", until)
                .addObject("subject", subject)
                .addObject("body", body)
                .addObject(
                        "mailto",
                        UriComponentsBuilder.fromUriString("mailto:")
                                .queryParam("subject", "{subject}")
                                .queryParam("body", "{body}")
                                .encode()
                                .buildAndExpand(subject, body.replace("\n", "\r\n"))
                                .toUriString())
                .addObject("opensHereOnly", PortalAddress.isThisMachine(base));
    }
}

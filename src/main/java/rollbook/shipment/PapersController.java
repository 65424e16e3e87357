package rollbook.shipment;

import jakarta.servlet.http.HttpServletRequest;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import rollbook.label.PdfPress;
import rollbook.label.QrSymbol;
import rollbook.production.Membership;
import rollbook.web.FileAnswer;
import rollbook.web.PortalAddress;

/**
 * The papers of a shipment: the packing slip that lies in the box, and the transmittal that says roll by roll what was
 * sent and by which manifests it can be checked.
 */
@Controller
class PapersController {
    private final PaperPages pages;
    private final PdfPress press;
    private final PortalAddress address;

    PapersController(PaperPages pages, PdfPress press, PortalAddress address) {
        this.pages = pages;
        this.press = press;
        this.address = address;
    }

    @GetMapping("/p/{production}/shipments/{id}/{paper:transmittal|packing-slip}.pdf")
    ResponseEntity<byte[]> print(
            Membership membership, @PathVariable UUID id, @PathVariable String paper, HttpServletRequest request) {
        PaperPages.Paper content = pages.of(membership, id);
        Map<String, Object> model = new HashMap<>();
        model.put("paper", content);
        model.put("symbol", QrSymbol.of(address.base(request) + membership.path("shipments/" + id)));
        byte[] pdf = press.print("shipment/" + paper, model, PaperStyle.CSS);
        String name =
                "%s-shipment-%d-%s.pdf".formatted(membership.code().toLowerCase(Locale.ROOT), content.number(), paper);
        return FileAnswer.shown(name, MediaType.APPLICATION_PDF, pdf);
    }
}

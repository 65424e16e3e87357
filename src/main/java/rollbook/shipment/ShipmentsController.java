package rollbook.shipment;

import java.util.Map;
import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import rollbook.production.Membership;

/** The shipments of a production: all, and one. */
@Controller
@RequestMapping("/p/{production}/shipments")
class ShipmentsController {
    private final ShipmentListPages lists;
    private final ShipmentPages pages;

    ShipmentsController(ShipmentListPages lists, ShipmentPages pages) {
        this.lists = lists;
        this.pages = pages;
    }

    @GetMapping
    ModelAndView list(Membership membership, @RequestParam Map<String, String> address) {
        return new ModelAndView("shipment/list").addObject("view", lists.page(membership, address));
    }

    @GetMapping("/{id}")
    ModelAndView one(Membership membership, @PathVariable UUID id) {
        return new ModelAndView("shipment/one").addObject("view", pages.one(membership, id));
    }
}

package rollbook.supplier;

import jakarta.validation.Valid;
import java.util.UUID;
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
import rollbook.production.MediaKind;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.quantity.Money;
import rollbook.web.NotFoundException;
import rollbook.web.Notice;

/** What a supplier offers: an item with its prices, and its forms. */
@Controller
@RequestMapping("/p/{production}/suppliers/{id}/items")
class CatalogueController {
    private final Suppliers suppliers;
    private final Catalogue catalogue;
    private final SupplierPages pages;

    CatalogueController(Suppliers suppliers, Catalogue catalogue, SupplierPages pages) {
        this.suppliers = suppliers;
        this.catalogue = catalogue;
        this.pages = pages;
    }

    @GetMapping("/{itemId}")
    ModelAndView one(Membership membership, @PathVariable UUID id, @PathVariable UUID itemId) {
        return new ModelAndView("supplier/item")
                .addObject("page", pages.item(membership, item(membership, id, itemId)));
    }

    @AllowedFor(Role.OFFICE)
    @GetMapping("/new")
    ModelAndView blank(Membership membership, @PathVariable UUID id) {
        return formPage(suppliers.get(membership.productionId(), id), HttpStatus.OK)
                .addObject("catalogueForm", CatalogueForm.blank());
    }

    /** Leads on to the price, without which nothing can be done with an item. */
    @AllowedFor(Role.OFFICE)
    @PostMapping("/new")
    ModelAndView add(
            Membership membership,
            @PathVariable UUID id,
            @Valid CatalogueForm form,
            BindingResult result,
            RedirectAttributes flash) {
        MediaSupplier supplier = suppliers.get(membership.productionId(), id);
        form.lookFurther(result);
        if (result.hasErrors()) {
            return formPage(supplier, HttpStatus.UNPROCESSABLE_CONTENT);
        }
        UUID itemId = catalogue.add(membership, id, form.details());
        flash.addFlashAttribute("notice", Notice.of("supplier.item.added", form.model()));
        return new ModelAndView("redirect:" + path(membership, id, itemId) + "/price");
    }

    @AllowedFor(Role.OFFICE)
    @GetMapping("/{itemId}/edit")
    ModelAndView edit(Membership membership, @PathVariable UUID id, @PathVariable UUID itemId) {
        CatalogueItem item = item(membership, id, itemId);
        return formPage(suppliers.get(membership.productionId(), id), HttpStatus.OK)
                .addObject("kept", item)
                .addObject("catalogueForm", CatalogueForm.of(item));
    }

    @AllowedFor(Role.OFFICE)
    @PostMapping("/{itemId}/edit")
    ModelAndView change(
            Membership membership,
            @PathVariable UUID id,
            @PathVariable UUID itemId,
            @Valid CatalogueForm form,
            BindingResult result,
            RedirectAttributes flash) {
        CatalogueItem item = item(membership, id, itemId);
        form.lookFurther(result);
        if (result.hasErrors()) {
            return formPage(suppliers.get(membership.productionId(), id), HttpStatus.UNPROCESSABLE_CONTENT)
                    .addObject("kept", item);
        }
        catalogue.change(membership, itemId, form.details(), form.version());
        return done(membership, id, itemId, Notice.of("supplier.item.saved", form.model()), flash);
    }

    @AllowedFor(Role.OFFICE)
    @GetMapping("/{itemId}/price")
    ModelAndView price(Membership membership, @PathVariable UUID id, @PathVariable UUID itemId) {
        CatalogueItem item = item(membership, id, itemId);
        return pricePage(item, HttpStatus.OK)
                .addObject("priceForm", PriceForm.of(item, pages.today(membership), Money.of(membership.currency())));
    }

    @AllowedFor(Role.OFFICE)
    @PostMapping("/{itemId}/price")
    ModelAndView addPrice(
            Membership membership,
            @PathVariable UUID id,
            @PathVariable UUID itemId,
            @Valid PriceForm form,
            BindingResult result,
            RedirectAttributes flash) {
        CatalogueItem item = item(membership, id, itemId);
        Money money = Money.of(membership.currency());
        form.lookFurther(money, result);
        if (result.hasErrors()) {
            return pricePage(item, HttpStatus.UNPROCESSABLE_CONTENT);
        }
        catalogue.price(membership, itemId, form.price(money), form.prices());
        return done(
                membership,
                id,
                itemId,
                Notice.of("supplier.price.saved", item.details().model()),
                flash);
    }

    @AllowedFor(Role.OFFICE)
    @PostMapping("/{itemId}/archive")
    ModelAndView archive(
            Membership membership,
            @PathVariable UUID id,
            @PathVariable UUID itemId,
            @RequestParam(defaultValue = "-1") int version,
            @RequestParam(defaultValue = "true") boolean archived,
            RedirectAttributes flash) {
        CatalogueItem item = item(membership, id, itemId);
        catalogue.archive(membership, itemId, archived, version);
        String key = archived ? "supplier.item.is-archived" : "supplier.item.restored";
        return done(membership, id, itemId, Notice.of(key, item.details().model()), flash);
    }

    private CatalogueItem item(Membership membership, UUID supplierId, UUID itemId) {
        CatalogueItem item = catalogue.get(membership.productionId(), itemId);
        if (!item.supplierId().equals(supplierId)) {
            throw new NotFoundException();
        }
        return item;
    }

    private static ModelAndView formPage(MediaSupplier supplier, HttpStatus status) {
        return new ModelAndView("supplier/item-edit", status)
                .addObject("supplier", supplier)
                .addObject("kinds", MediaKind.values());
    }

    private static ModelAndView pricePage(CatalogueItem item, HttpStatus status) {
        return new ModelAndView("supplier/price", status).addObject("item", item);
    }

    private static String path(Membership membership, UUID supplierId, UUID itemId) {
        return membership.path("suppliers/" + supplierId + "/items/" + itemId);
    }

    private static ModelAndView done(
            Membership membership, UUID supplierId, UUID itemId, Notice notice, RedirectAttributes flash) {
        flash.addFlashAttribute("notice", notice);
        return new ModelAndView("redirect:" + path(membership, supplierId, itemId));
    }
}

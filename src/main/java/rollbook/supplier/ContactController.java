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
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.Notice;

/** Whom to ask at a supplier: add, change, remove. */
@Controller
@RequestMapping("/p/{production}/suppliers/{id}/contacts")
class ContactController {
    private final Suppliers suppliers;
    private final Contacts contacts;

    ContactController(Suppliers suppliers, Contacts contacts) {
        this.suppliers = suppliers;
        this.contacts = contacts;
    }

    @AllowedFor(Role.OFFICE)
    @GetMapping("/new")
    ModelAndView blank(Membership membership, @PathVariable UUID id) {
        return page(supplier(membership, id), HttpStatus.OK).addObject("contactForm", ContactForm.blank());
    }

    @AllowedFor(Role.OFFICE)
    @PostMapping("/new")
    ModelAndView add(
            Membership membership,
            @PathVariable UUID id,
            @Valid ContactForm form,
            BindingResult result,
            RedirectAttributes flash) {
        MediaSupplier supplier = supplier(membership, id);
        if (result.hasErrors()) {
            return page(supplier, HttpStatus.UNPROCESSABLE_CONTENT);
        }
        contacts.add(membership, id, form.role(), form.name(), form.phone(), form.email());
        return done(membership, id, "supplier.contact.saved", form.role(), flash);
    }

    @AllowedFor(Role.OFFICE)
    @GetMapping("/{contactId}")
    ModelAndView edit(Membership membership, @PathVariable UUID id, @PathVariable UUID contactId) {
        MediaSupplier supplier = supplier(membership, id);
        Contact contact = contacts.get(supplier, contactId);
        return page(supplier, HttpStatus.OK)
                .addObject("kept", contact)
                .addObject("contactForm", ContactForm.of(contact));
    }

    @AllowedFor(Role.OFFICE)
    @PostMapping("/{contactId}")
    ModelAndView change(
            Membership membership,
            @PathVariable UUID id,
            @PathVariable UUID contactId,
            @Valid ContactForm form,
            BindingResult result,
            RedirectAttributes flash) {
        MediaSupplier supplier = supplier(membership, id);
        Contact contact = contacts.get(supplier, contactId);
        if (result.hasErrors()) {
            return page(supplier, HttpStatus.UNPROCESSABLE_CONTENT).addObject("kept", contact);
        }
        contacts.change(membership, id, form.contact(contactId));
        return done(membership, id, "supplier.contact.saved", form.role(), flash);
    }

    @AllowedFor(Role.OFFICE)
    @PostMapping("/{contactId}/remove")
    ModelAndView remove(
            Membership membership, @PathVariable UUID id, @PathVariable UUID contactId, RedirectAttributes flash) {
        String role = contacts.get(supplier(membership, id), contactId).role();
        contacts.remove(membership, id, contactId);
        return done(membership, id, "supplier.contact.removed", role, flash);
    }

    private MediaSupplier supplier(Membership membership, UUID id) {
        return suppliers.get(membership.productionId(), id);
    }

    private static ModelAndView page(MediaSupplier supplier, HttpStatus status) {
        return new ModelAndView("supplier/contact", status).addObject("supplier", supplier);
    }

    private static ModelAndView done(
            Membership membership, UUID id, String key, String role, RedirectAttributes flash) {
        flash.addFlashAttribute("notice", Notice.of(key, role));
        return new ModelAndView("redirect:" + membership.path("suppliers/" + id));
    }
}

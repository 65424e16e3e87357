package rollbook.supplier;

import jakarta.validation.Valid;
import java.time.DayOfWeek;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
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
import rollbook.ordering.PublicHolidays;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.quantity.Money;
import rollbook.web.Choice;
import rollbook.web.Notice;
import rollbook.web.Refusal;

/** The suppliers of a production: all, one, and their forms. */
@Controller
@RequestMapping("/p/{production}/suppliers")
class SuppliersController {
    private final Suppliers suppliers;
    private final SupplierPages pages;
    private final SupplierWords words;

    SuppliersController(Suppliers suppliers, SupplierPages pages, SupplierWords words) {
        this.suppliers = suppliers;
        this.pages = pages;
        this.words = words;
    }

    @GetMapping
    ModelAndView list(Membership membership, @RequestParam Map<String, String> address) {
        return new ModelAndView("supplier/list").addObject("page", pages.all(membership, address));
    }

    @GetMapping("/{id}")
    ModelAndView one(Membership membership, @PathVariable UUID id) {
        return new ModelAndView("supplier/one").addObject("page", pages.one(membership, id));
    }

    @AllowedFor(Role.OFFICE)
    @GetMapping("/new")
    ModelAndView blank(Membership membership) {
        return page(HttpStatus.OK).addObject("supplierForm", SupplierForm.blank());
    }

    @AllowedFor(Role.OFFICE)
    @PostMapping("/new")
    ModelAndView add(Membership membership, @Valid SupplierForm form, BindingResult result, RedirectAttributes flash) {
        Money money = Money.of(membership.currency());
        form.lookFurther(money, result);
        UUID id = save(result, () -> suppliers.add(membership, form.details(money)));
        return id == null ? page(HttpStatus.UNPROCESSABLE_CONTENT) : done(membership, id, form.name(), flash);
    }

    @AllowedFor(Role.OFFICE)
    @GetMapping("/{id}/edit")
    ModelAndView edit(Membership membership, @PathVariable UUID id) {
        MediaSupplier supplier = suppliers.get(membership.productionId(), id);
        return page(HttpStatus.OK)
                .addObject("kept", supplier)
                .addObject("supplierForm", SupplierForm.of(supplier, Money.of(membership.currency())));
    }

    @AllowedFor(Role.OFFICE)
    @PostMapping("/{id}/edit")
    ModelAndView change(
            Membership membership,
            @PathVariable UUID id,
            @Valid SupplierForm form,
            BindingResult result,
            RedirectAttributes flash) {
        MediaSupplier supplier = suppliers.get(membership.productionId(), id);
        Money money = Money.of(membership.currency());
        form.lookFurther(money, result);
        UUID saved = save(result, () -> {
            suppliers.change(membership, new MediaSupplier(id, form.details(money), form.version()));
            return id;
        });
        return saved == null
                ? page(HttpStatus.UNPROCESSABLE_CONTENT).addObject("kept", supplier)
                : done(membership, id, form.name(), flash);
    }

    @AllowedFor(Role.OFFICE)
    @PostMapping("/{id}/remove")
    String remove(Membership membership, @PathVariable UUID id, RedirectAttributes flash) {
        String name = suppliers.get(membership.productionId(), id).name();
        suppliers.remove(membership, id);
        flash.addFlashAttribute("notice", Notice.of("supplier.removed", name));
        return "redirect:" + membership.path("suppliers");
    }

    /** Null if the form is wrong; a name that is taken is told beside it. */
    private static @Nullable UUID save(BindingResult result, Supplier<UUID> save) {
        if (result.hasErrors()) {
            return null;
        }
        try {
            return save.get();
        } catch (Refusal refusal) {
            if (!refusal.key().equals(Suppliers.NAME_TAKEN)) {
                throw refusal;
            }
            result.rejectValue("name", refusal.key(), refusal.args().toArray(), null);
            return null;
        }
    }

    private ModelAndView page(HttpStatus status) {
        List<Choice> countries = PublicHolidays.countries().stream()
                .map(code -> new Choice(code, words.country(code)))
                .sorted(Comparator.comparing(Choice::text))
                .toList();
        return new ModelAndView("supplier/edit", status)
                .addObject("countries", countries)
                .addObject("weekdays", DayOfWeek.values());
    }

    private static ModelAndView done(Membership membership, UUID id, String name, RedirectAttributes flash) {
        flash.addFlashAttribute("notice", Notice.of("supplier.saved", name));
        return new ModelAndView("redirect:" + membership.path("suppliers/" + id));
    }
}

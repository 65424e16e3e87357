package rollbook.production;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
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
import rollbook.web.Notice;
import rollbook.web.Typed;

/** The places where media are kept: add, change, remove. */
@Controller
@RequestMapping("/p/{production}/settings/places")
class PlacesController {
    private static final String TAKEN = "production.refused.place-exists";

    private final Places places;

    PlacesController(Places places) {
        this.places = places;
    }

    @AllowedFor(Role.OFFICE)
    @GetMapping("/new")
    ModelAndView form(Membership membership) {
        return newPage(HttpStatus.OK).addObject("placeForm", new PlaceForm("", false, "", 0));
    }

    @AllowedFor(Role.OFFICE)
    @PostMapping("/new")
    ModelAndView add(Membership membership, @Valid PlaceForm form, BindingResult result, RedirectAttributes flash) {
        boolean saved = Typed.save(
                result, "name", TAKEN, () -> places.add(membership, form.name(), form.offSite(), form.threat()));
        return saved
                ? done(membership, flash, "production.place.saved", form.name())
                : newPage(HttpStatus.UNPROCESSABLE_CONTENT);
    }

    @AllowedFor(Role.OFFICE)
    @GetMapping("/{id}")
    ModelAndView place(Membership membership, @PathVariable UUID id) {
        Place place = places.get(membership.productionId(), id);
        return page(place, HttpStatus.OK)
                .addObject("placeForm", new PlaceForm(place.name(), place.offSite(), place.threat(), place.version()));
    }

    @AllowedFor(Role.OFFICE)
    @PostMapping("/{id}")
    ModelAndView change(
            Membership membership,
            @PathVariable UUID id,
            @Valid PlaceForm form,
            BindingResult result,
            RedirectAttributes flash) {
        Place place = places.get(membership.productionId(), id);
        boolean saved = Typed.save(
                result,
                "name",
                TAKEN,
                () -> places.change(
                        membership, new Place(id, form.name(), form.offSite(), form.threat(), form.version())));
        return saved
                ? done(membership, flash, "production.place.saved", form.name())
                : page(place, HttpStatus.UNPROCESSABLE_CONTENT);
    }

    @AllowedFor(Role.OFFICE)
    @PostMapping("/{id}/remove")
    ModelAndView remove(Membership membership, @PathVariable UUID id, RedirectAttributes flash) {
        String name = places.get(membership.productionId(), id).name();
        places.remove(membership, id);
        return done(membership, flash, "production.place.removed", name);
    }

    private static ModelAndView newPage(HttpStatus status) {
        return new ModelAndView("production/place", status);
    }

    private static ModelAndView page(Place place, HttpStatus status) {
        return newPage(status).addObject("kept", place);
    }

    private static ModelAndView done(Membership membership, RedirectAttributes flash, String key, String name) {
        flash.addFlashAttribute("notice", Notice.of(key, name));
        return new ModelAndView("redirect:" + membership.path("settings"));
    }

    record PlaceForm(
            @NotBlank @Size(max = 60) String name,
            boolean offSite,
            @Size(max = 30) String threat,
            int version) {
        PlaceForm {
            name = Typed.text(name);
            threat = Typed.text(threat);
        }
    }
}

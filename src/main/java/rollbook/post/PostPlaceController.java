package rollbook.post;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Place;
import rollbook.production.Places;
import rollbook.production.Role;
import rollbook.web.Choice;
import rollbook.web.Notice;

/** Says which of the places is post. */
@Controller
@RequestMapping("/p/{production}/post/place")
class PostPlaceController {
    private final PostPlaces post;
    private final Places places;

    PostPlaceController(PostPlaces post, Places places) {
        this.post = post;
        this.places = places;
    }

    record PlaceForm(@NotNull @Nullable UUID placeId, int version) {}

    @GetMapping
    @AllowedFor({Role.POST, Role.OFFICE})
    ModelAndView form(Membership membership) {
        PlaceForm form = post.get(membership.productionId())
                .map(chosen -> new PlaceForm(chosen.placeId(), chosen.version()))
                .orElseGet(() -> new PlaceForm(null, PostPlace.NOT_CHOSEN));
        return page(membership, HttpStatus.OK).addObject("placeForm", form);
    }

    @PostMapping
    @AllowedFor({Role.POST, Role.OFFICE})
    ModelAndView choose(
            Membership membership,
            @Valid @ModelAttribute PlaceForm form,
            BindingResult result,
            RedirectAttributes flash) {
        List<Place> all = places.list(membership.productionId());
        if (!result.hasErrors() && all.stream().noneMatch(place -> place.id().equals(form.placeId()))) {
            result.rejectValue("placeId", "NotNull");
        }
        if (result.hasErrors()) {
            return page(membership, HttpStatus.UNPROCESSABLE_CONTENT);
        }
        UUID placeId = Objects.requireNonNull(form.placeId());
        post.choose(membership, placeId, form.version());
        String name = all.stream()
                .filter(place -> place.id().equals(placeId))
                .findFirst()
                .orElseThrow()
                .name();
        flash.addFlashAttribute("notice", Notice.of("post.place.saved", name));
        return new ModelAndView("redirect:" + membership.path("post"));
    }

    private ModelAndView page(Membership membership, HttpStatus status) {
        return new ModelAndView("post/place", status)
                .addObject(
                        "places",
                        places.list(membership.productionId()).stream()
                                .map(place -> new Choice(place.id().toString(), place.name()))
                                .toList());
    }
}

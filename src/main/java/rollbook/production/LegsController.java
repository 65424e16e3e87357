package rollbook.production;

import jakarta.validation.Valid;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.web.Choice;
import rollbook.web.Notice;
import rollbook.web.Typed;

/** The legs of the copy plan: add, change, remove. */
@Controller
@RequestMapping("/p/{production}/settings/legs")
class LegsController {
    private static final String TAKEN = "production.refused.leg-exists";
    private static final List<MediaKind> MEDIA_KINDS =
            Stream.of(MediaKind.values()).filter(MediaKind::holdsCopies).toList();

    private final CopyPlan copyPlan;
    private final Places places;
    private final PlanSentences sentences;

    LegsController(CopyPlan copyPlan, Places places, PlanSentences sentences) {
        this.copyPlan = copyPlan;
        this.places = places;
        this.sentences = sentences;
    }

    @AllowedFor({})
    @GetMapping("/new")
    ModelAndView form(Membership membership) {
        return page(membership, HttpStatus.OK).addObject("legForm", LegForm.blank());
    }

    @AllowedFor({})
    @PostMapping("/new")
    ModelAndView add(Membership membership, @Valid LegForm form, BindingResult result, RedirectAttributes flash) {
        form.check(result);
        boolean saved =
                Typed.save(result, "name", TAKEN, () -> copyPlan.addLeg(membership, form.leg(UUID.randomUUID())));
        return saved
                ? done(membership, flash, "production.leg.saved", form.name())
                : page(membership, HttpStatus.UNPROCESSABLE_CONTENT);
    }

    @AllowedFor({})
    @GetMapping("/{id}")
    ModelAndView leg(Membership membership, @PathVariable UUID id) {
        Leg leg = copyPlan.leg(membership.productionId(), id);
        return page(membership, HttpStatus.OK, leg).addObject("legForm", LegForm.of(leg));
    }

    @AllowedFor({})
    @PostMapping("/{id}")
    ModelAndView change(
            Membership membership,
            @PathVariable UUID id,
            @Valid LegForm form,
            BindingResult result,
            RedirectAttributes flash) {
        Leg leg = copyPlan.leg(membership.productionId(), id);
        form.check(result);
        boolean saved = Typed.save(result, "name", TAKEN, () -> copyPlan.changeLeg(membership, form.leg(id)));
        return saved
                ? done(membership, flash, "production.leg.saved", form.name())
                : page(membership, HttpStatus.UNPROCESSABLE_CONTENT, leg);
    }

    @AllowedFor({})
    @PostMapping("/{id}/remove")
    ModelAndView remove(Membership membership, @PathVariable UUID id, RedirectAttributes flash) {
        String name = copyPlan.leg(membership.productionId(), id).name();
        copyPlan.removeLeg(membership, id);
        return done(membership, flash, "production.leg.removed", name);
    }

    private ModelAndView page(Membership membership, HttpStatus status) {
        List<Choice> choices = places.list(membership.productionId()).stream()
                .map(place -> new Choice(place.id().toString(), place.name()))
                .toList();
        return new ModelAndView("production/leg", status)
                .addObject("places", choices)
                .addObject("mediaKinds", MEDIA_KINDS)
                .addObject("renditions", Rendition.values());
    }

    private ModelAndView page(Membership membership, HttpStatus status, Leg leg) {
        return page(membership, status).addObject("kept", leg).addObject("sentence", sentences.leg(leg));
    }

    private static ModelAndView done(Membership membership, RedirectAttributes flash, String key, String name) {
        flash.addFlashAttribute("notice", Notice.of(key, name));
        return new ModelAndView("redirect:" + membership.path("settings"));
    }
}

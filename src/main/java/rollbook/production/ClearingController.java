package rollbook.production;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import java.util.List;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.web.Notice;

/** What clears a card. */
@Controller
@RequestMapping("/p/{production}/settings/clearing")
class ClearingController {
    private final CopyPlan copyPlan;
    private final Places places;
    private final PlanSentences sentences;

    ClearingController(CopyPlan copyPlan, Places places, PlanSentences sentences) {
        this.copyPlan = copyPlan;
        this.places = places;
        this.sentences = sentences;
    }

    @AllowedFor({})
    @GetMapping
    ModelAndView form(Membership membership) {
        ClearingPolicy policy = copyPlan.policy(membership.productionId());
        return page(membership, policy, HttpStatus.OK).addObject("clearingForm", ClearingForm.of(policy));
    }

    @AllowedFor({})
    @PostMapping
    ModelAndView change(
            Membership membership, @Valid ClearingForm form, BindingResult result, RedirectAttributes flash) {
        form.check(result);
        if (result.hasErrors()) {
            ClearingPolicy policy = copyPlan.policy(membership.productionId());
            return page(membership, policy, HttpStatus.UNPROCESSABLE_CONTENT);
        }
        copyPlan.changePolicy(membership, form.policy());
        flash.addFlashAttribute("notice", Notice.of("production.policy.saved"));
        return new ModelAndView("redirect:" + membership.path("settings"));
    }

    private ModelAndView page(Membership membership, ClearingPolicy policy, HttpStatus status) {
        UUID id = membership.productionId();
        List<Leg> legs = copyPlan.legs(id);
        return new ModelAndView("production/clearing", status)
                .addObject("sentence", sentences.policy(policy, legs))
                .addObject("gaps", sentences.gaps(policy, legs, places.list(id)));
    }

    record ClearingForm(
            @Min(1) @Max(9) int provenCopies,
            @Min(1) @Max(9) int items,
            @Min(1) @Max(3) int mediaKinds,
            @Min(1) @Max(9) int places,
            boolean offSite,
            int version) {

        static ClearingForm of(ClearingPolicy policy) {
            return new ClearingForm(
                    policy.provenCopies(),
                    policy.items(),
                    policy.mediaKinds(),
                    policy.places(),
                    policy.offSite(),
                    policy.version());
        }

        /** A copy lies on one item, of one kind, at one place: none of these can be more than the copies. */
        void check(BindingResult result) {
            notMoreThanCopies("items", items, result);
            notMoreThanCopies("mediaKinds", mediaKinds, result);
            notMoreThanCopies("places", places, result);
        }

        private void notMoreThanCopies(String field, int number, BindingResult result) {
            if (Typed.isReadable(result) && number > provenCopies) {
                result.rejectValue(field, "production.policy.more-than-copies");
            }
        }

        ClearingPolicy policy() {
            return new ClearingPolicy(provenCopies, items, mediaKinds, places, offSite, version);
        }
    }
}

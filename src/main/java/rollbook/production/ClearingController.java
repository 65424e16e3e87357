package rollbook.production;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.web.NotFoundException;
import rollbook.web.Notice;
import rollbook.web.Typed;

/** What clears a medium of each kind. */
@Controller
@RequestMapping("/p/{production}/settings/clearing/{subject}")
class ClearingController {
    private final CopyPlan copyPlan;
    private final Places places;
    private final PlanSentences sentences;
    private final PolicyTrial trial;

    ClearingController(CopyPlan copyPlan, Places places, PlanSentences sentences, PolicyTrial trial) {
        this.copyPlan = copyPlan;
        this.places = places;
        this.sentences = sentences;
        this.trial = trial;
    }

    @AllowedFor({})
    @GetMapping
    ModelAndView form(Membership membership, @PathVariable String subject) {
        ClearingRules rules = copyPlan.rules(membership.productionId());
        return page(membership, rules, kind(subject), HttpStatus.OK)
                .addObject("clearingForm", ClearingForm.of(rules.policy(kind(subject))));
    }

    /** Says what a draft would change, and changes nothing. */
    @AllowedFor({})
    @PostMapping(params = "try")
    ModelAndView tryOut(
            Membership membership, @PathVariable String subject, @Valid ClearingForm form, BindingResult result) {
        form.check(result);
        ClearingRules rules = copyPlan.rules(membership.productionId());
        if (result.hasErrors()) {
            return page(membership, rules, kind(subject), HttpStatus.UNPROCESSABLE_CONTENT);
        }
        ClearingPolicy draft = form.policy(kind(subject));
        return page(membership, rules.with(draft), draft.subject(), HttpStatus.OK)
                .addObject("trial", trial.outcome(membership.productionId(), draft));
    }

    @AllowedFor({})
    @PostMapping
    ModelAndView change(
            Membership membership,
            @PathVariable String subject,
            @Valid ClearingForm form,
            BindingResult result,
            RedirectAttributes flash) {
        form.check(result);
        if (result.hasErrors()) {
            ClearingRules rules = copyPlan.rules(membership.productionId());
            return page(membership, rules, kind(subject), HttpStatus.UNPROCESSABLE_CONTENT);
        }
        copyPlan.changePolicy(membership, form.policy(kind(subject)));
        flash.addFlashAttribute("notice", Notice.of("production.policy.saved"));
        return new ModelAndView("redirect:" + membership.path("settings"));
    }

    private static MediaKind kind(String subject) {
        return ClearingPolicy.SUBJECTS.stream()
                .filter(kind -> kind.name().equals(subject))
                .findFirst()
                .orElseThrow(NotFoundException::new);
    }

    private ModelAndView page(Membership membership, ClearingRules rules, MediaKind subject, HttpStatus status) {
        return new ModelAndView("production/clearing", status)
                .addObject("subject", subject)
                .addObject("sentence", sentences.policy(rules, subject))
                .addObject("gaps", sentences.gaps(rules, subject, places.list(membership.productionId())));
    }

    /** @param checkedWithinDays empty if it is all one when a copy was checked */
    record ClearingForm(
            @Min(1) @Max(9) int provenCopies,
            @Min(1) @Max(9) int items,
            @Min(1) @Max(3) int mediaKinds,
            @Min(1) @Max(9) int places,
            boolean offSite,
            @Min(1) @Max(3650) @Nullable Integer checkedWithinDays,
            boolean sourceHashNeeded,
            boolean roundTripNeeded,
            int version) {

        static ClearingForm of(ClearingPolicy policy) {
            return new ClearingForm(
                    policy.provenCopies(),
                    policy.items(),
                    policy.mediaKinds(),
                    policy.places(),
                    policy.offSite(),
                    policy.checkedWithinDays(),
                    policy.sourceHashNeeded(),
                    policy.roundTripNeeded(),
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

        ClearingPolicy policy(MediaKind subject) {
            return new ClearingPolicy(
                    subject,
                    provenCopies,
                    items,
                    mediaKinds,
                    places,
                    offSite,
                    checkedWithinDays,
                    sourceHashNeeded,
                    roundTripNeeded,
                    version);
        }
    }
}

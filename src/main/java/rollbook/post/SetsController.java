package rollbook.post;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.Notice;
import rollbook.web.Typed;

/** The sets of tapes and other kept media: what lies on them, which were made, and the record of a new one. */
@Controller
@RequestMapping("/p/{production}/post/sets")
class SetsController {
    private static final String SET = "/{set:[0-9a-fA-F-]{36}}";

    private final MediaSets sets;
    private final LegShelf shelf;
    private final SetWords words;

    SetsController(MediaSets sets, LegShelf shelf, SetWords words) {
        this.sets = sets;
        this.shelf = shelf;
        this.words = words;
    }

    /**
     * @param reason needed if something is missing or isn't proven
     * @param replaces the set that is corrected, or null
     */
    record SetForm(
            @NotNull @Nullable UUID legId,
            @NotNull @Nullable UUID upToDayId,
            @Size(max = 400) @Nullable String note,
            @Size(max = 400) @Nullable String reason,
            @Nullable UUID replaces) {

        MediaSets.NewSet made() {
            return new MediaSets.NewSet(
                    Objects.requireNonNull(legId),
                    Objects.requireNonNull(upToDayId),
                    Typed.text(note),
                    Typed.text(reason),
                    replaces);
        }
    }

    record ReasonForm(@NotBlank @Size(max = 400) @Nullable String reason) {}

    @GetMapping
    String list(Membership membership, Model model) {
        List<LegContents> legs = shelf.all(membership.productionId());
        List<MediaSet> made = sets.list(membership.productionId());
        model.addAttribute("legs", legs);
        model.addAttribute("sets", made);
        model.addAttribute("words", words);
        model.addAttribute("sentence", words.sentence(legs));
        model.addAttribute("mayRecord", membership.may(Role.POST));
        return "post/sets";
    }

    @GetMapping("/new")
    @AllowedFor(Role.POST)
    ModelAndView ask(
            Membership membership,
            @RequestParam(required = false) @Nullable UUID leg,
            @RequestParam(required = false) @Nullable UUID replaces) {
        List<LegContents> legs = shelf.all(membership.productionId());
        if (replaces != null) {
            MediaSet old = sets.get(membership.productionId(), replaces);
            return form(membership, legs, old, HttpStatus.OK)
                    .addObject("setForm", new SetForm(old.legId(), old.dayId(), old.note(), old.reason(), replaces));
        }
        UUID day = legs.stream()
                .filter(one -> one.leg().id().equals(leg))
                .map(LegContents::completeUpTo)
                .filter(Objects::nonNull)
                .map(LegContents.Day::id)
                .findFirst()
                .orElse(null);
        return form(membership, legs, null, HttpStatus.OK).addObject("setForm", new SetForm(leg, day, "", "", null));
    }

    @PostMapping("/new")
    @AllowedFor(Role.POST)
    ModelAndView record(
            Membership membership,
            @Valid @ModelAttribute SetForm form,
            BindingResult result,
            RedirectAttributes flash) {
        List<LegContents> legs = shelf.all(membership.productionId());
        MediaSet old = form.replaces() == null ? null : sets.get(membership.productionId(), form.replaces());
        if (!result.hasFieldErrors("legId")
                && legs.stream().noneMatch(leg -> leg.leg().id().equals(form.legId()))) {
            result.rejectValue("legId", "NotNull");
        }
        if (!result.hasFieldErrors("upToDayId")
                && words.days(legs).stream().noneMatch(day -> day.value().equals(String.valueOf(form.upToDayId())))) {
            result.rejectValue("upToDayId", "NotNull");
        }
        if (result.hasErrors()) {
            return form(membership, legs, old, HttpStatus.UNPROCESSABLE_CONTENT);
        }
        try {
            UUID id = sets.record(membership, form.made());
            flash.addFlashAttribute(
                    "notice",
                    Notice.of(
                            "post.set.saved",
                            sets.get(membership.productionId(), id).number()));
            return new ModelAndView("redirect:" + membership.path("post/sets/" + id));
        } catch (MediaSets.Incomplete incomplete) {
            result.rejectValue(
                    "reason",
                    "post.set.incomplete",
                    new Object[] {incomplete.rollCodes().size(), words.some(incomplete.rollCodes())},
                    null);
            return form(membership, legs, old, HttpStatus.UNPROCESSABLE_CONTENT);
        }
    }

    private ModelAndView form(
            Membership membership, List<LegContents> legs, @Nullable MediaSet old, HttpStatus status) {
        return new ModelAndView("post/set-new", status)
                .addObject("legs", words.legs(legs))
                .addObject("days", words.days(legs))
                .addObject("standing", words.sentence(legs))
                .addObject("old", old)
                .addObject("sentence", words.formSentence(old));
    }

    @GetMapping(SET)
    String one(Membership membership, @PathVariable UUID set, Model model) {
        MediaSet made = sets.get(membership.productionId(), set);
        List<SetRoll> rolls = sets.rolls(membership.productionId(), set);
        model.addAttribute("made", made);
        model.addAttribute("sentence", words.sentence(made));
        model.addAttribute("media", SetMedium.of(rolls));
        model.addAttribute("gaps", SetMedium.gaps(rolls));
        model.addAttribute("mayRecord", membership.may(Role.POST));
        return "post/set";
    }

    @GetMapping(SET + "/withdrawal")
    @AllowedFor(Role.POST)
    ModelAndView askToWithdraw(Membership membership, @PathVariable UUID set) {
        return withdrawal(membership, set, HttpStatus.OK).addObject("reasonForm", new ReasonForm(""));
    }

    @PostMapping(SET + "/withdrawal")
    @AllowedFor(Role.POST)
    ModelAndView withdraw(
            Membership membership,
            @PathVariable UUID set,
            @Valid @ModelAttribute ReasonForm form,
            BindingResult result,
            RedirectAttributes flash) {
        if (result.hasErrors()) {
            return withdrawal(membership, set, HttpStatus.UNPROCESSABLE_CONTENT);
        }
        sets.withdraw(membership, set, Typed.text(form.reason()));
        flash.addFlashAttribute(
                "notice",
                Notice.of(
                        "post.set.withdrawn",
                        sets.get(membership.productionId(), set).number()));
        return new ModelAndView("redirect:" + membership.path("post/sets"));
    }

    private ModelAndView withdrawal(Membership membership, UUID set, HttpStatus status) {
        return new ModelAndView("post/set-withdrawal", status)
                .addObject("made", sets.get(membership.productionId(), set));
    }
}

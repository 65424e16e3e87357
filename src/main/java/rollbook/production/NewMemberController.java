package rollbook.production;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.people.People;
import rollbook.web.Notice;
import rollbook.web.Typed;

/** Brings a person onto a production: with a new account or with the one that they have. */
@Controller
@RequestMapping("/p/{production}/settings/people/new")
class NewMemberController {
    private final Memberships memberships;
    private final People people;

    NewMemberController(Memberships memberships, People people) {
        this.memberships = memberships;
        this.people = people;
    }

    @AllowedFor({})
    @GetMapping
    ModelAndView form(Membership membership) {
        return page(HttpStatus.OK)
                .addObject("newMemberForm", new NewMemberForm(AccountKind.NEW, "", "", Set.of(Role.WRANGLER)));
    }

    @AllowedFor({})
    @PostMapping
    ModelAndView add(Membership membership, @Valid NewMemberForm form, BindingResult result, RedirectAttributes flash) {
        if (form.account() == AccountKind.NEW && form.displayName().isEmpty()) {
            result.rejectValue("displayName", "production.member.name-missing");
        }
        if (result.hasErrors()) {
            return page(HttpStatus.UNPROCESSABLE_CONTENT);
        }
        return form.account() == AccountKind.NEW
                ? addNew(membership, form, result)
                : addExisting(membership, form, result, flash);
    }

    /** Answers with the password itself rather than with a redirect, so that it is kept nowhere, not even in a session. */
    private ModelAndView addNew(Membership membership, NewMemberForm form, BindingResult result) {
        var shown = new ModelAndView("production/first-password");
        boolean saved = Typed.save(result, "signInName", "people.refused.name-taken", () -> {
            People.NewAccount account =
                    memberships.addNew(membership, form.signInName(), form.displayName(), form.roles());
            shown.addObject("password", account.password());
        });
        return saved
                ? shown.addObject("name", form.displayName()).addObject("signInName", form.signInName())
                : page(HttpStatus.UNPROCESSABLE_CONTENT);
    }

    private ModelAndView addExisting(
            Membership membership, NewMemberForm form, BindingResult result, RedirectAttributes flash) {
        Optional<UUID> person = people.findBySignInName(form.signInName());
        if (person.isEmpty()) {
            result.rejectValue("signInName", "production.member.no-account");
        } else if (memberships.members(membership.productionId()).stream()
                .anyMatch(member -> member.id().equals(person.get()))) {
            result.rejectValue("signInName", "production.member.already");
        }
        if (result.hasErrors()) {
            return page(HttpStatus.UNPROCESSABLE_CONTENT);
        }
        memberships.add(membership, person.orElseThrow(), form.signInName(), form.roles());
        flash.addFlashAttribute("notice", Notice.of("production.member.added", form.signInName()));
        return new ModelAndView("redirect:" + membership.path("settings"));
    }

    private static ModelAndView page(HttpStatus status) {
        return new ModelAndView("production/new-member", status)
                .addObject("accountKinds", AccountKind.values())
                .addObject("roles", Role.values());
    }

    enum AccountKind {
        NEW,
        EXISTING
    }

    record NewMemberForm(
            @NotNull @Nullable AccountKind account,
            @NotBlank @Pattern(regexp = People.SIGN_IN_NAME) String signInName,
            @Size(max = 100) String displayName,
            @NotEmpty Set<Role> roles) {
        NewMemberForm(
                @Nullable AccountKind account,
                @Nullable String signInName,
                @Nullable String displayName,
                @Nullable Set<Role> roles) {
            this.account = account;
            this.signInName = Typed.text(signInName);
            this.displayName = Typed.text(displayName);
            this.roles = roles == null ? Set.of() : roles;
        }
    }
}

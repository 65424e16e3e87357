package rollbook.production;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotEmpty;
import java.util.Set;
import java.util.UUID;
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
import rollbook.web.Notice;

/** The people of a production: change their roles, give a new password, take them off. */
@Controller
@RequestMapping("/p/{production}/settings/people/{id}")
class MembersController {
    private final Memberships memberships;

    MembersController(Memberships memberships) {
        this.memberships = memberships;
    }

    @AllowedFor({})
    @GetMapping
    ModelAndView member(Membership membership, @PathVariable UUID id) {
        Memberships.Member member = memberships.member(membership.productionId(), id);
        return page(membership, member, HttpStatus.OK)
                .addObject("rolesForm", new RolesForm(member.roles(), member.roles()));
    }

    @AllowedFor({})
    @PostMapping
    ModelAndView change(
            Membership membership,
            @PathVariable UUID id,
            @Valid RolesForm form,
            BindingResult result,
            RedirectAttributes flash) {
        Memberships.Member member = memberships.member(membership.productionId(), id);
        if (result.hasErrors()) {
            return page(membership, member, HttpStatus.UNPROCESSABLE_CONTENT);
        }
        memberships.setRoles(membership, id, form.before(), form.roles());
        flash.addFlashAttribute("notice", Notice.of("production.member.saved", member.displayName()));
        return new ModelAndView("redirect:" + membership.path("settings"));
    }

    @AllowedFor({})
    @PostMapping("/remove")
    ModelAndView remove(Membership membership, @PathVariable UUID id, RedirectAttributes flash) {
        Memberships.Member member = memberships.member(membership.productionId(), id);
        memberships.remove(membership, id);
        flash.addFlashAttribute("notice", Notice.of("production.member.removed", member.displayName()));
        boolean self = id.equals(membership.personId());
        return new ModelAndView("redirect:" + (self ? "/productions" : membership.path("settings")));
    }

    /** Answers with the password itself rather than with a redirect, so that it is kept nowhere, not even in a session. */
    @AllowedFor({})
    @PostMapping("/password")
    ModelAndView renewPassword(Membership membership, @PathVariable UUID id) {
        Memberships.Member member = memberships.member(membership.productionId(), id);
        return new ModelAndView("production/first-password")
                .addObject("name", member.displayName())
                .addObject("signInName", member.signInName())
                .addObject("password", memberships.renewPassword(membership, id));
    }

    private static ModelAndView page(Membership membership, Memberships.Member member, HttpStatus status) {
        return new ModelAndView("production/member", status)
                .addObject("member", member)
                .addObject("self", member.id().equals(membership.personId()))
                .addObject("roles", Role.values());
    }

    /** @param before the roles that the person had when the form was opened */
    record RolesForm(@NotEmpty Set<Role> roles, Set<Role> before) {
        RolesForm(@Nullable Set<Role> roles, @Nullable Set<Role> before) {
            this.roles = roles == null ? Set.of() : roles;
            this.before = before == null ? Set.of() : before;
        }
    }
}

package rollbook.people;

import jakarta.servlet.http.HttpSession;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.util.Objects;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.web.Notice;

/** A person's own account: the password. */
@Controller
class AccountController {
    private final People people;

    AccountController(People people) {
        this.people = people;
    }

    @GetMapping("/account")
    ModelAndView account(@AuthenticationPrincipal SignedInPerson person) {
        return page(person, HttpStatus.OK).addObject("accountForm", new AccountForm("", "", ""));
    }

    @PostMapping("/account")
    ModelAndView changePassword(
            @AuthenticationPrincipal SignedInPerson person,
            @Valid AccountForm form,
            BindingResult result,
            HttpSession session,
            RedirectAttributes flash) {
        if (!result.hasFieldErrors("newPassword") && !form.newPassword().equals(form.repeated())) {
            result.rejectValue("repeated", "people.password.differs");
        }
        if (!result.hasErrors()
                && !people.changePassword(person.id(), form.oldPassword(), form.newPassword(), session.getId())) {
            result.rejectValue("oldPassword", "people.password.wrong");
        }
        if (result.hasErrors()) {
            return page(person, HttpStatus.UNPROCESSABLE_CONTENT);
        }
        flash.addFlashAttribute("notice", Notice.of("people.account.saved"));
        return new ModelAndView("redirect:/account");
    }

    private static ModelAndView page(SignedInPerson person, HttpStatus status) {
        return new ModelAndView("people/account", status).addObject("person", person);
    }

    record AccountForm(
            @NotBlank String oldPassword,

            @NotBlank @Size(min = People.PASSWORD_MIN_LENGTH, max = People.PASSWORD_MAX_LENGTH)
            String newPassword,

            String repeated) {
        AccountForm {
            newPassword = Objects.requireNonNullElse(newPassword, "");
        }

        /** Without the passwords, which belong into no log. */
        @Override
        public String toString() {
            return "AccountForm";
        }
    }
}

package rollbook.production;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.util.Objects;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.people.People;
import rollbook.web.Notice;
import rollbook.web.Typed;

/** The page of the first start: opened with the code from the log, gone once there is an account. */
@Controller
class SetUpController {
    private final SetUp setUp;

    SetUpController(SetUp setUp) {
        this.setUp = setUp;
    }

    @GetMapping("/set-up")
    ModelAndView form() {
        if (!setUp.isOpen()) {
            return closed();
        }
        return page(HttpStatus.OK)
                .addObject("setUpForm", new SetUpForm("", "", "", "", "", "", "", Zones.guess(), "EUR"));
    }

    @PostMapping("/set-up")
    ModelAndView make(@Valid SetUpForm form, BindingResult result, RedirectAttributes flash) {
        if (!setUp.isOpen()) {
            return closed();
        }
        if (!result.hasFieldErrors("password") && !form.password().equals(form.repeated())) {
            result.rejectValue("repeated", "people.password.differs");
        }
        Zones.check(form.zone(), result);
        Currencies.check(form.currency(), result);
        if (result.hasErrors()) {
            return page(HttpStatus.UNPROCESSABLE_CONTENT);
        }
        return switch (setUp.make(form)) {
            case DONE -> {
                flash.addFlashAttribute("notice", Notice.of("production.set-up.done", form.code(), form.signInName()));
                yield new ModelAndView("redirect:/sign-in");
            }
            case WRONG_CODE -> {
                result.rejectValue("oneTimeCode", "production.set-up.wrong-code");
                yield page(HttpStatus.UNPROCESSABLE_CONTENT);
            }
            case CLOSED -> closed();
        };
    }

    private static ModelAndView page(HttpStatus status) {
        return new ModelAndView("production/set-up", status).addObject("zones", Zones.choices());
    }

    /** Not there any more; says so to whoever lost a race for it. */
    private static ModelAndView closed() {
        return new ModelAndView("production/set-up-closed", HttpStatus.NOT_FOUND);
    }

    record SetUpForm(
            @NotBlank String oneTimeCode,
            @NotBlank @Size(max = 100) String displayName,
            @NotBlank @Pattern(regexp = People.SIGN_IN_NAME) String signInName,

            @Size(min = People.PASSWORD_MIN_LENGTH, max = People.PASSWORD_MAX_LENGTH)
            String password,

            String repeated,
            @NotBlank @Pattern(regexp = Production.CODE) String code,
            @NotBlank @Size(max = 100) String name,
            String zone,
            String currency) {
        SetUpForm {
            displayName = Typed.text(displayName);
            signInName = Typed.text(signInName);
            password = Objects.requireNonNullElse(password, "");
            code = Typed.code(code);
            name = Typed.text(name);
            currency = Typed.code(currency);
        }

        /** Without the code and the passwords, which belong into no log. */
        @Override
        public String toString() {
            return "SetUpForm[signInName=" + signInName + ", code=" + code + "]";
        }
    }
}

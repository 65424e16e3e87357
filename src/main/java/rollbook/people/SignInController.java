package rollbook.people;

import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;

@Controller
class SignInController {
    private final People people;
    private final SignInHints hints;

    SignInController(People people, SignInHints hints) {
        this.people = people;
        this.hints = hints;
    }

    @GetMapping("/sign-in")
    String signIn(
            @RequestParam(name = "failed", required = false) @Nullable String failed,
            @RequestParam(name = "signed-out", required = false) @Nullable String signedOut,
            Model model) {
        if (people.isEmpty()) {
            return "redirect:/set-up";
        }
        model.addAttribute("failed", failed != null);
        model.addAttribute("signedOut", signedOut != null);
        model.addAttribute("hints", hints.accounts());
        return "people/sign-in";
    }
}

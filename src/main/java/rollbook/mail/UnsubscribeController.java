package rollbook.mail;

import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;
import rollbook.web.Secret;

/**
 * Ends mail of a kind, for whoever has a message of it: a person by a button, a mail program by posting at once
 * (RFC 8058), which may neither sign in nor be led elsewhere.
 */
@Controller
class UnsubscribeController {
    private final Unsubscriptions unsubscriptions;

    UnsubscribeController(Unsubscriptions unsubscriptions) {
        this.unsubscriptions = unsubscriptions;
    }

    /** Changes nothing yet: programs that look at mail follow its links. */
    @GetMapping("/mail/unsubscribe/{secret}")
    ModelAndView offer(@PathVariable String secret) {
        return page(secret, false);
    }

    @PostMapping("/mail/unsubscribe/{secret}")
    ModelAndView end(@PathVariable String secret) {
        unsubscriptions.end(Secret.of(secret));
        return page(secret, true);
    }

    private ModelAndView page(String secret, boolean ended) {
        return new ModelAndView("mail/unsubscribe")
                .addObject("offer", unsubscriptions.offer(Secret.of(secret)))
                .addObject("ended", ended);
    }
}

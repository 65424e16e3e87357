package rollbook.reporting;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import rollbook.offload.Roll;
import rollbook.offload.Rolls;
import rollbook.production.Membership;
import rollbook.reporting.Codes.Found;
import rollbook.reporting.Codes.Match;
import rollbook.verification.ClipSearch;

/** The box that takes any code, and what it offers while somebody types. */
@Controller
class FindController {
    private static final int LONGEST = 200;
    private static final int MOST_OFFERED = 8;
    private static final int MOST_LISTED = 50;

    private final Codes codes;
    private final Places places;
    private final Rolls rolls;
    private final ClipSearch clips;
    private final Clock clock;

    FindController(Codes codes, Places places, Rolls rolls, ClipSearch clips, Clock clock) {
        this.codes = codes;
        this.places = places;
        this.rolls = rolls;
        this.clips = clips;
        this.clock = clock;
    }

    /** Leads on to what is meant, if that is one thing; else lists what could be. */
    @GetMapping("/p/{production}/find")
    ModelAndView find(Membership membership, @RequestParam(name = "code", defaultValue = "") String code) {
        String text = plain(code);
        List<Found> found = found(membership, text, MOST_LISTED + 1);
        List<Places.Place> named = places.beginningWith(text);
        return one(membership, text, found, named)
                .map(page -> new ModelAndView("redirect:" + membership.path(page)))
                .orElseGet(() -> list(text, found, named));
    }

    /** A part of a page. */
    @GetMapping("/p/{production}/find/suggestions")
    ModelAndView suggestions(Membership membership, @RequestParam(name = "code", defaultValue = "") String code) {
        String text = plain(code);
        List<Found> found = found(membership, text, MOST_OFFERED + 1);
        List<Places.Place> named = places.beginningWith(text);
        return new ModelAndView("reporting/find :: suggestions")
                .addObject("found", found.subList(0, Math.min(found.size(), MOST_OFFERED)))
                .addObject("places", named.subList(0, Math.min(named.size(), MOST_OFFERED - Math.min(found.size(), 5))))
                .addObject("more", found.size() > MOST_OFFERED)
                .addObject("clips", found.isEmpty() && clips.knows(membership.productionId(), text) ? text : "");
    }

    private List<Found> found(Membership membership, String text, int most) {
        LocalDate today = LocalDate.ofInstant(clock.instant(), membership.zone());
        return codes.find(
                membership.productionId(), text, TypedDate.read(text, today).orElse(null), most);
    }

    /** The page of the only thing that can be meant. Of two it is never one: the reader chooses. */
    private Optional<String> one(Membership membership, String text, List<Found> found, List<Places.Place> named) {
        List<Found> same = best(found, Match.SAME);
        List<Places.Place> called =
                named.stream().filter(place -> Places.isCalled(place, text)).toList();
        if (same.size() + called.size() > 0) {
            return same.size() + called.size() > 1
                    ? Optional.empty()
                    : Optional.of(same.isEmpty() ? called.get(0).page() : page(membership, same.get(0)));
        }
        List<Found> nearly = best(found, Match.NEARLY);
        if (!nearly.isEmpty()) {
            return nearly.size() > 1 ? Optional.empty() : Optional.of(page(membership, nearly.get(0)));
        }
        if (found.isEmpty() && named.isEmpty() && clips.knows(membership.productionId(), text)) {
            return Optional.of("clips?q=" + URLEncoder.encode(text, StandardCharsets.UTF_8));
        }
        // The first digits of a SHA-256 are how a document is called.
        return found.size() == 1 && found.get(0).what().equals("verification.code")
                ? Optional.of(found.get(0).page())
                : Optional.empty();
    }

    /** What is gone counts only if nothing of that name is here. */
    private static List<Found> best(List<Found> found, Match match) {
        List<Found> all = found.stream().filter(one -> one.match() == match).toList();
        List<Found> here = all.stream().filter(one -> !one.past()).toList();
        return here.isEmpty() ? all : here;
    }

    /** Who types a card's code asks whether it may be handed back: the page of the roll on it says so. */
    private String page(Membership membership, Found found) {
        return found.holdsRoll()
                ? rolls.latestOnCard(membership.productionId(), found.id())
                        .map(Roll::id)
                        .map(id -> "rolls/" + id)
                        .orElse(found.page())
                : found.page();
    }

    private static ModelAndView list(String text, List<Found> found, List<Places.Place> named) {
        if (found.isEmpty() && named.isEmpty()) {
            return new ModelAndView("reporting/not-found", HttpStatus.NOT_FOUND).addObject("text", text);
        }
        return new ModelAndView("reporting/find")
                .addObject("text", text)
                .addObject("found", found.subList(0, Math.min(found.size(), MOST_LISTED)))
                .addObject("more", found.size() > MOST_LISTED)
                .addObject("places", named);
    }

    private static String plain(String typed) {
        String text = typed.replaceAll("\\p{Cntrl}", "").strip();
        return text.length() > LONGEST ? text.substring(0, LONGEST) : text;
    }
}

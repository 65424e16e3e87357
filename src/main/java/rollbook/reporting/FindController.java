package rollbook.reporting;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import rollbook.inventory.CardState;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.offload.Roll;
import rollbook.offload.Rolls;
import rollbook.production.Membership;
import rollbook.production.TypedCode;
import rollbook.schedule.ShootingDay;
import rollbook.schedule.ShootingDays;
import rollbook.verification.ClipSearch;
import rollbook.verification.DocumentSearch;

/** The box that takes any code. */
@Controller
class FindController {
    private static final Pattern DAY = Pattern.compile("(?i)day\\s*0*(\\d{1,4})");

    private final Rolls rolls;
    private final MediaItems items;
    private final ShootingDays days;
    private final ObjectProvider<TypedCode> others;
    private final ClipSearch clips;
    private final DocumentSearch documents;

    FindController(
            Rolls rolls,
            MediaItems items,
            ShootingDays days,
            ObjectProvider<TypedCode> others,
            ClipSearch clips,
            DocumentSearch documents) {
        this.rolls = rolls;
        this.items = items;
        this.days = days;
        this.others = others;
        this.clips = clips;
        this.documents = documents;
    }

    @GetMapping("/p/{production}/find")
    ModelAndView find(Membership membership, @RequestParam(name = "code", defaultValue = "") String code) {
        String text = code.strip();
        Optional<String> page = roll(membership, text)
                .or(() -> item(membership, text))
                .or(() -> day(membership, text))
                .or(() -> other(membership, text))
                .or(() -> clip(membership, text))
                .or(() -> documents.find(membership.productionId(), text).map(id -> "documents/" + id));
        if (page.isPresent()) {
            return new ModelAndView("redirect:" + membership.path(page.get()));
        }
        ModelAndView nothing = new ModelAndView("reporting/not-found");
        nothing.addObject("text", text);
        nothing.setStatus(HttpStatus.NOT_FOUND);
        return nothing;
    }

    private Optional<String> roll(Membership membership, String text) {
        return rolls.findByCode(membership.productionId(), text).map(roll -> "rolls/" + roll.id());
    }

    /** Who types a card's code asks whether it may be handed back: the page of the roll on it says so. */
    private Optional<String> item(Membership membership, String text) {
        return items.findByCode(membership.productionId(), text)
                .or(() -> items.findBySerial(membership.productionId(), text))
                .map(item -> holdsRoll(item)
                        ? rolls.latestOnCard(membership.productionId(), item.id())
                                .map(Roll::id)
                                .map(id -> "rolls/" + id)
                                .orElse("media/" + item.id())
                        : "media/" + item.id());
    }

    private static boolean holdsRoll(MediaItem item) {
        return item.cardState() != null && item.cardState() != CardState.BLANK;
    }

    private Optional<String> other(Membership membership, String text) {
        return others.orderedStream()
                .map(other -> other.page(membership.productionId(), text))
                .flatMap(Optional::stream)
                .findFirst();
    }

    private Optional<String> clip(Membership membership, String text) {
        return clips.knows(membership.productionId(), text)
                ? Optional.of("clips?q=" + URLEncoder.encode(text, StandardCharsets.UTF_8))
                : Optional.empty();
    }

    private Optional<String> day(Membership membership, String text) {
        Matcher day = DAY.matcher(text);
        if (!day.matches()) {
            return Optional.empty();
        }
        int number = Integer.parseInt(day.group(1));
        return days.list(membership.productionId()).stream()
                .filter(candidate -> candidate.number() == number)
                .map(ShootingDay::id)
                .map((UUID id) -> "rolls?day=" + id)
                .findFirst();
    }
}

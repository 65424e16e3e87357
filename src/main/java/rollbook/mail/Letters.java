package rollbook.mail;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import rollbook.production.Membership;
import rollbook.web.Display;

/** Puts drafts into words, for a member of a production. */
@Component
class Letters {
    private final Display display;

    Letters(Display display) {
        this.display = display;
    }

    Letter of(Draft draft, Membership to) {
        ZoneId zone = to.zone();
        return new Letter(
                words(draft.subject(), zone),
                draft.sentences().stream().map(said -> words(said, zone)).collect(Collectors.joining(" ")),
                draft.chapters().stream()
                        .map(chapter -> new Letter.Part(
                                display.text(chapter.titleKey()),
                                chapter.entries().stream()
                                        .map(entry -> new Letter.Line(
                                                words(entry.said(), zone),
                                                entry.page() == null ? null : to.path(entry.page())))
                                        .toList()))
                        .toList());
    }

    private String words(Said said, ZoneId zone) {
        return display.text(
                said.key(), said.args().stream().map(arg -> argument(arg, zone)).toArray());
    }

    private Object argument(Object argument, ZoneId zone) {
        if (argument instanceof Said said) {
            return words(said, zone);
        }
        if (argument instanceof LocalDate date) {
            return display.shortDate(date);
        }
        if (argument instanceof Instant instant) {
            return display.moment(instant, zone);
        }
        return argument instanceof List<?> several ? listed(several, zone) : argument;
    }

    private String listed(List<?> several, ZoneId zone) {
        List<String> words =
                several.stream().map(one -> String.valueOf(argument(one, zone))).toList();
        int last = words.size() - 1;
        return last < 1
                ? String.join("", words)
                : display.text("mail.and", String.join(", ", words.subList(0, last)), words.get(last));
    }
}

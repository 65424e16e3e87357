package rollbook.post;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.web.Choice;
import rollbook.web.Display;

/** Says what lies on kept media and which sets were made of them. */
@Component
class SetWords {
    private static final int NAMED = 8;

    private final Display display;

    SetWords(Display display) {
        this.display = display;
    }

    String sentence(List<LegContents> legs) {
        if (legs.isEmpty()) {
            return display.text("post.sets.no-legs");
        }
        if (legs.stream().allMatch(leg -> leg.rolls().isEmpty())) {
            return display.text("post.sets.no-rolls");
        }
        return legs.stream()
                .map(leg -> leg.completeUpTo() == null
                        ? display.text("post.sets.incomplete", leg.leg().name())
                        : display.text("post.sets.complete", leg.leg().name(), day(leg.completeUpTo())))
                .collect(Collectors.joining(" "));
    }

    /** Complete and proven up to day 9; 2 rolls are missing or not proven. */
    public String upTo(LegContents contents) {
        LegContents.Day day = contents.completeUpTo();
        int gaps = contents.gaps().size();
        return day == null
                ? display.text("post.sets.up-to.nothing", gaps)
                : display.text("post.sets.up-to", day(day), gaps);
    }

    /** Day 9 (Main unit, Thu 12 Mar 2026). */
    public String day(LegContents.Day day) {
        return day(day.number(), day.unitName(), day.date());
    }

    String day(int number, String unitName, LocalDate date) {
        return display.text("post.sets.day", number, unitName, display.shortDate(date));
    }

    /** From the first to the last day of which a medium holds a roll. */
    public String days(LegContents.Medium medium) {
        return medium.first().equals(medium.last())
                ? day(medium.first())
                : display.text("post.sets.days", day(medium.first()), day(medium.last()));
    }

    String sentence(MediaSet set) {
        String day = day(set.dayNumber(), set.unitName(), set.date());
        String media = String.join(", ", set.items());
        String says = set.isComplete()
                ? display.text(
                        "post.set.sentence.complete",
                        set.legName(),
                        day,
                        set.items().size(),
                        media,
                        set.rolls())
                : display.text(
                        "post.set.sentence.gaps",
                        set.legName(),
                        day,
                        set.items().size(),
                        media,
                        set.rolls(),
                        set.gaps());
        if (set.replacedByNumber() != null) {
            return display.text("post.set.sentence.replaced", set.replacedByNumber()) + " " + says;
        }
        return set.withdrawnAt() == null ? says : display.text("post.set.sentence.withdrawn") + " " + says;
    }

    String formSentence(@Nullable MediaSet old) {
        return old == null
                ? display.text("post.set.new.sentence")
                : display.text("post.set.correct.sentence", old.number());
    }

    List<Choice> legs(List<LegContents> legs) {
        return legs.stream()
                .map(leg -> new Choice(leg.leg().id().toString(), leg.leg().name()))
                .toList();
    }

    /** A choice for each day of which there is a roll, the latest first. */
    List<Choice> days(List<LegContents> legs) {
        List<Choice> days = new ArrayList<>();
        if (!legs.isEmpty()) {
            legs.get(0).days().forEach(day -> days.add(0, new Choice(day.id().toString(), day(day))));
        }
        return days;
    }

    String some(List<String> codes) {
        String named = String.join(", ", codes.subList(0, Math.min(NAMED, codes.size())));
        return codes.size() > NAMED ? named + "…" : named;
    }
}

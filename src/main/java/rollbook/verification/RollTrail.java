package rollbook.verification;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.offload.Copy;
import rollbook.offload.Roll;
import rollbook.picture.Trail;
import rollbook.web.Display;

/** A roll's way: a lane for its card and each copy, for as long as it was there, with a mark for each verdict. */
@Component
class RollTrail {
    private final Display display;
    private final Clock clock;

    RollTrail(Display display, Clock clock) {
        this.display = display;
        this.clock = clock;
    }

    record Picture(String sentence, Trail trail) {}

    /**
     * @param history verdicts, newest first
     * @param clearances of the card, newest first
     */
    Picture picture(Roll roll, List<Copy> copies, List<CopyVerdict> history, List<Clearance> clearances, ZoneId zone) {
        List<Trail.Line> lines = new ArrayList<>();
        lines.add(card(roll, clearances, zone));
        copies.stream().flatMap(copy -> copy(copy, history, zone).stream()).forEach(lines::add);
        Trail trail = Trail.of(lines, Trail.end(clock.instant()), zone);
        return new Picture(sentence(copies, history, zone), trail);
    }

    private Trail.Line card(Roll roll, List<Clearance> clearances, ZoneId zone) {
        Instant gone = roll.onCard()
                ? null
                : clearances.stream()
                        .map(Clearance::erasedAt)
                        .filter(Objects::nonNull)
                        .findFirst()
                        .orElse(roll.pulledAt());
        String name = display.text("verification.way.card", roll.cardCode());
        return new Trail.Line(name, List.of(span(name, roll.loadedAt(), gone, zone)), List.of());
    }

    /** Empty while nothing tells since when it is there: nobody logged its writing or judged it. */
    private Optional<Trail.Line> copy(Copy copy, List<CopyVerdict> history, ZoneId zone) {
        List<CopyVerdict> own = history.stream()
                .filter(verdict -> copy.id().equals(verdict.copyId()))
                .sorted(Comparator.comparing(CopyVerdict::judgedAt))
                .toList();
        String name = display.text("verification.way.copy", copy.itemCode(), copy.placeName());
        return since(copy, own)
                .map(since -> new Trail.Line(
                        name,
                        List.of(span(name, since, copy.erasedAt(), zone)),
                        own.stream()
                                .map(verdict -> new Trail.Dot(
                                        verdict.judgedAt(), verdict.verdict().name(), says(verdict, zone)))
                                .toList()));
    }

    /** A copy that no offload was recorded for has a time of writing long before the show. */
    private static Optional<Instant> since(Copy copy, List<CopyVerdict> own) {
        return Instant.EPOCH.isBefore(copy.writtenFrom())
                ? Optional.of(copy.writtenFrom())
                : own.stream().map(CopyVerdict::judgedAt).findFirst();
    }

    private Trail.Span span(String name, Instant from, @Nullable Instant to, ZoneId zone) {
        return new Trail.Span(
                from,
                to,
                "",
                to == null
                        ? display.text("verification.way.since", name, display.moment(from, zone))
                        : display.text(
                                "verification.way.from-to",
                                name,
                                display.moment(from, zone),
                                display.moment(to, zone)));
    }

    private String says(CopyVerdict verdict, ZoneId zone) {
        return display.text(
                "verification.way.verdict",
                display.moment(verdict.judgedAt(), zone),
                display.text("web.verdict." + display.verdict(verdict.verdict())));
    }

    private String sentence(List<Copy> copies, List<CopyVerdict> history, ZoneId zone) {
        long there = copies.stream().filter(copy -> !copy.isErased()).count();
        String now = display.text("verification.way.copies", there, copies.size() - there);
        return history.stream()
                .filter(verdict -> verdict.copyId() != null)
                .findFirst()
                .flatMap(verdict -> copies.stream()
                        .filter(copy -> copy.id().equals(verdict.copyId()))
                        .findFirst()
                        .map(copy -> now + " "
                                + display.text(
                                        "verification.way.last",
                                        copy.itemCode(),
                                        display.text("web.verdict." + display.verdict(verdict.verdict())),
                                        display.moment(verdict.judgedAt(), zone))))
                .orElse(now);
    }
}

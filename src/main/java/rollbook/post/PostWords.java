package rollbook.post;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.post.MediumAtPost.Step;
import rollbook.shipment.SentItem;
import rollbook.shipment.ShipmentItem;
import rollbook.web.Display;

/** Says how rolls and media stand at post. */
@Component
class PostWords {
    private static final int NAMED = 3;

    private final Display display;

    PostWords(Display display) {
        this.display = display;
    }

    /** The answer to: has everything arrived, is it proven, what may go back? */
    String sentence(PostBook book) {
        int rolls = book.rolls().size();
        String place = book.place().placeName();
        if (rolls == 0) {
            return display.text("post.sentence.none");
        }
        List<String> parts = new ArrayList<>();
        parts.add(
                book.received() == rolls && book.proven() == rolls
                        ? display.text("post.sentence.all", rolls, place)
                        : display.text("post.sentence.some", book.received(), rolls, place, book.proven()));
        List<MediumAtPost> amiss = book.with(Step.LOST, Step.SEEK, Step.COMPARE, Step.AWAIT_LATE);
        amiss.stream().limit(NAMED).map(medium -> says(book, medium)).forEach(parts::add);
        if (amiss.size() > NAMED) {
            parts.add(display.text("post.sentence.more", amiss.size() - NAMED));
        }
        long underWay = book.rolls().stream()
                .filter(roll -> roll.state() == PostState.UNDER_WAY)
                .count();
        if (underWay > 0) {
            parts.add(display.text("post.sentence.under-way", underWay));
        }
        int toSay = book.with(Step.SAY).size();
        if (toSay > 0) {
            parts.add(display.text("post.sentence.say", toSay));
        }
        String release = release(book);
        if (!release.isEmpty()) {
            parts.add(release);
        }
        return String.join(" ", parts);
    }

    /** The same for the page of the media. */
    String mediaSentence(PostBook book) {
        if (book.media().isEmpty()) {
            return display.text("post.media.none", book.place().placeName());
        }
        long waiting = book.media().stream().filter(MediumAtPost::needsPost).count();
        String says = display.text("post.media.sentence", waiting, book.place().placeName());
        String release = release(book);
        return release.isEmpty() ? says : says + " " + release;
    }

    /** Which media may go back to set, or could once they are cleared or erased; empty if none. */
    private String release(PostBook book) {
        List<String> codes = Stream.of(Step.CLEAR, Step.ERASE, Step.SEND_BACK)
                .flatMap(step -> book.with(step).stream())
                .map(medium -> medium.any().itemCode())
                .sorted()
                .toList();
        return codes.isEmpty() ? "" : display.text("post.sentence.release", codes.size(), some(codes));
    }

    /** What comes next for a medium, in a sentence. */
    public String says(PostBook book, MediumAtPost medium) {
        ZoneId zone = book.place().zone();
        SentItem sent = medium.sent();
        String code = medium.any().itemCode();
        int rolls = medium.rolls();
        String place = book.place().placeName();
        return switch (medium.step()) {
            case LOST -> display.text("post.medium.LOST", code, rolls);
            case SEEK ->
                sent != null && sent.state() == ShipmentItem.State.MISSING
                        ? display.text("post.medium.SEEK.missed", code, rolls, place, sent.number())
                        : display.text("post.medium.SEEK.denied", code, rolls, place, saidBy(medium.stay()));
            case COMPARE -> display.text("post.medium.COMPARE", code, codes(medium, PostState.DIFFERS));
            case AWAIT_LATE, AWAIT -> onItsWay(medium, Objects.requireNonNull(sent), zone, rolls);
            case SAY ->
                display.text(
                        "post.medium.SAY",
                        code,
                        rolls,
                        place,
                        at(Objects.requireNonNull(medium.stay()).arrivedAt(), zone));
            case ERASE -> display.text("post.medium.ERASE", code);
            case CLEAR -> display.text("post.medium.CLEAR", code, rolls);
            case READ -> display.text("post.medium.READ", code, rolls, place, medium.unread());
            case SEND_BACK -> display.text("post.medium.SEND_BACK", code);
            case DOUBTED -> display.text("post.medium.DOUBTED", code, rolls);
            case HOLD ->
                display.text(
                        "post.medium.HOLD",
                        code,
                        rolls,
                        medium.gate().waitsFor().size());
            case LEAVES -> leaves(code, Objects.requireNonNull(medium.leaving()));
            case KEEP -> display.text("post.medium.KEEP", code, rolls, place, medium.proven());
        };
    }

    private String leaves(String code, SentItem leaving) {
        return leaving.state() == ShipmentItem.State.PACKED
                ? display.text("post.medium.LEAVES.packed", code, leaving.toPlaceName(), leaving.number())
                : display.text("post.medium.LEAVES.sent", code, leaving.toPlaceName(), leaving.number());
    }

    private String onItsWay(MediumAtPost medium, SentItem sent, ZoneId zone, int rolls) {
        String code = medium.any().itemCode();
        if (sent.expectedBy() == null) {
            return display.text("post.medium.AWAIT.open", code, rolls, at(sent.sentAt(), zone));
        }
        return display.text(
                medium.step() == Step.AWAIT_LATE ? "post.medium.AWAIT.late" : "post.medium.AWAIT.expected",
                code,
                rolls,
                at(sent.sentAt(), zone),
                at(sent.expectedBy(), zone));
    }

    /** How a copy stands, in a few words that follow its medium's code. */
    public String says(PostBook book, CopyAtPost copy) {
        ZoneId zone = book.place().zone();
        String post = book.place().placeName();
        String where = copy.copy().placeName();
        SentItem sent = copy.sent();
        String checked = at(copy.standing().checkedAt(), zone);
        String arrived = copy.stay() == null ? "" : at(copy.stay().arrivedAt(), zone);
        return switch (copy.state()) {
            case LOST -> display.text("post.copy.LOST");
            case NOT_HERE ->
                sent != null && sent.state() == ShipmentItem.State.MISSING
                        ? display.text("post.copy.NOT_HERE.missed", sent.number())
                        : display.text("post.copy.NOT_HERE.denied", post, saidBy(copy.stay()));
            case DIFFERS -> display.text("post.copy.DIFFERS", checked);
            case DOUBTED -> display.text("post.copy.DOUBTED");
            case LATE, UNDER_WAY -> onItsWay(Objects.requireNonNull(sent), copy.state(), zone);
            case WENT_BACK ->
                copy.copy().isErased()
                        ? display.text("post.copy.WENT_BACK.erased", post)
                        : display.text("post.copy.WENT_BACK.gone", post, where);
            case NOT_SENT -> display.text("post.copy.NOT_SENT", where);
            case SAID -> display.text("post.copy.SAID", post, arrived);
            case ARRIVED -> display.text("post.copy.ARRIVED", post, arrived);
            case READ -> display.text("post.copy.READ", checked);
            case PROVEN ->
                copy.copy().placeId().equals(book.place().placeId())
                        ? display.text("post.copy.PROVEN.there", checked)
                        : display.text("post.copy.PROVEN.elsewhere", checked, where);
        };
    }

    private String onItsWay(SentItem sent, PostState state, ZoneId zone) {
        if (sent.expectedBy() == null) {
            return display.text("post.copy.UNDER_WAY.open", at(sent.sentAt(), zone), sent.number());
        }
        return display.text(
                state == PostState.LATE ? "post.copy.UNDER_WAY.late" : "post.copy.UNDER_WAY.expected",
                at(sent.sentAt(), zone),
                at(sent.expectedBy(), zone),
                sent.number());
    }

    /** Whoever said last whether it is there. */
    private static String saidBy(@Nullable Stay stay) {
        return stay == null || stay.saidByName() == null ? "" : stay.saidByName();
    }

    /** Tue 24 Nov 2026, 19:15. */
    String at(@Nullable Instant instant, ZoneId zone) {
        return instant == null
                ? ""
                : display.shortDate(LocalDate.ofInstant(instant, zone)) + ", " + display.clockTime(instant, zone);
    }

    private static String codes(MediumAtPost medium, PostState state) {
        return medium.copies().stream()
                .filter(copy -> copy.state() == state)
                .map(CopyAtPost::rollCode)
                .distinct()
                .sorted(Comparator.naturalOrder())
                .collect(Collectors.joining(", "));
    }

    private String some(List<String> codes) {
        String named = String.join(", ", codes.subList(0, Math.min(NAMED, codes.size())));
        return codes.size() > NAMED ? named + "…" : named;
    }
}

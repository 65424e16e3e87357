package rollbook.inventory;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;
import rollbook.inventory.CustodyTrail.Stay;
import rollbook.inventory.ItemTrail.Happening;
import rollbook.picture.Trail;
import rollbook.production.Membership;
import rollbook.web.Display;

/** Draws where an item was, and below that what happened to it, a line for each kind of thing. */
@Component
class TrailPictures {
    private final ObjectProvider<ItemTrail> sources;
    private final Display display;
    private final Clock clock;

    TrailPictures(ObjectProvider<ItemTrail> sources, Display display, Clock clock) {
        this.sources = sources;
        this.display = display;
        this.clock = clock;
    }

    /** @param newestFirst the item's chain */
    TrailPicture picture(Membership viewer, MediaItem item, List<CustodyEntry> newestFirst) {
        List<CustodyEntry> chain = new ArrayList<>(newestFirst);
        Collections.reverse(chain);
        CustodyTrail custody = CustodyTrail.of(chain);
        List<Happening> happenings = sources.orderedStream()
                .flatMap(source -> source.of(viewer.productionId(), item.id()).stream())
                .sorted(Comparator.comparing(Happening::at))
                .toList();
        List<Trail.Line> lines = new ArrayList<>(places(custody, viewer.zone()));
        lines.addAll(kinds(happenings, viewer.zone()));
        Trail trail = Trail.of(lines, Trail.end(clock.instant()), viewer.zone());
        return new TrailPicture(
                sentence(custody, viewer.zone()),
                trail,
                happenings.stream()
                        .map(one -> new TrailPicture.Row(one.at(), display.text(one.kindKey()), says(one)))
                        .toList());
    }

    private List<Trail.Line> places(CustodyTrail custody, ZoneId zone) {
        Map<String, List<Trail.Span>> lanes = new LinkedHashMap<>();
        for (Stay stay : custody.stays()) {
            lanes.computeIfAbsent(where(stay), name -> new ArrayList<>())
                    .add(new Trail.Span(stay.from(), stay.to(), stay.doubted() ? "doubted" : "", says(stay, zone)));
        }
        return lanes.entrySet().stream()
                .map(lane -> new Trail.Line(lane.getKey(), lane.getValue(), List.of()))
                .toList();
    }

    private List<Trail.Line> kinds(List<Happening> happenings, ZoneId zone) {
        Map<String, List<Trail.Dot>> lanes = new LinkedHashMap<>();
        for (Happening one : happenings) {
            lanes.computeIfAbsent(display.text(one.kindKey()), name -> new ArrayList<>())
                    .add(new Trail.Dot(
                            one.at(),
                            "moment",
                            display.text("inventory.trail.moment", display.moment(one.at(), zone), says(one))));
        }
        return lanes.entrySet().stream()
                .map(lane -> new Trail.Line(lane.getKey(), List.of(), lane.getValue()))
                .toList();
    }

    private String says(Happening one) {
        return display.text(one.says().key(), one.says().args().toArray());
    }

    private String where(Stay stay) {
        return stay.holder().isEmpty()
                ? stay.placeName()
                : display.text("inventory.trail.with", stay.placeName(), stay.holder());
    }

    private String says(Stay stay, ZoneId zone) {
        Instant to = stay.to();
        String doubted = stay.doubted() ? " " + display.text("inventory.trail.doubted") : "";
        return (to == null
                        ? display.text("inventory.trail.since", where(stay), display.moment(stay.from(), zone))
                        : display.text(
                                "inventory.trail.from-to",
                                where(stay),
                                display.moment(stay.from(), zone),
                                display.moment(to, zone)))
                + doubted;
    }

    /** With whom it is, and with whom it was before. */
    private String sentence(CustodyTrail custody, ZoneId zone) {
        List<Stay> stays = custody.stays();
        if (stays.isEmpty()) {
            return display.text("inventory.trail.nowhere");
        }
        Stay last = stays.get(stays.size() - 1);
        String now = last.to() == null
                ? display.text("inventory.trail.now", where(last), display.moment(last.from(), zone), last.enteredBy())
                : display.text("inventory.trail.gone", where(last), display.moment(last.to(), zone));
        if (stays.size() == 1) {
            return now;
        }
        Stay before = stays.get(stays.size() - 2);
        return now + " "
                + display.text(
                        "inventory.trail.before",
                        where(before),
                        display.moment(before.from(), zone),
                        display.moment(Objects.requireNonNull(before.to()), zone));
    }
}

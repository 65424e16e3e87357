package rollbook.production;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import rollbook.web.Display;

/** The copy plan and the clearing policy in plain language. */
@Component
class PlanSentences {
    private final Display display;

    PlanSentences(Display display) {
        this.display = display;
    }

    /** What a person must know first: how many copies every roll gets, and when a card may be cleared. */
    String overview(ClearingPolicy policy, List<Leg> legs) {
        return legs.isEmpty()
                ? display.text("production.settings.sentence.none")
                : display.text("production.settings.sentence", legs.size(), policy(policy, legs));
    }

    Map<UUID, String> legs(List<Leg> legs) {
        return legs.stream().collect(Collectors.toMap(Leg::id, this::leg));
    }

    String leg(Leg leg) {
        String rendition = switch (leg.rendition()) {
            case AS_RECORDED -> display.text("production.leg.says.as-recorded");
            case ENCODED -> display.text("production.leg.says.encoded", leg.keptPercent());
        };
        String medium =
                display.text("production.leg.says.medium." + leg.mediaKind().name(), leg.placeName());
        Integer days = leg.returnsAfterDays();
        String end = days == null
                ? display.text("production.leg.says.kept")
                : display.text("production.leg.says.returns", days);
        String clearing =
                display.text(leg.neededToClear() ? "production.leg.says.needed" : "production.leg.says.spare");
        return display.text("production.leg.says", rendition, medium, end, clearing);
    }

    String policy(ClearingPolicy policy, List<Leg> legs) {
        String conditions = Stream.of(
                        display.text("production.policy.says.copies", policy.provenCopies()),
                        atLeastTwo(policy.items(), "production.policy.says.items"),
                        atLeastTwo(policy.mediaKinds(), "production.policy.says.kinds"),
                        atLeastTwo(policy.places(), "production.policy.says.places"),
                        policy.offSite() ? display.text("production.policy.says.off-site") : "")
                .filter(condition -> !condition.isEmpty())
                .collect(Collectors.joining(", "));
        String needed = legs.stream().filter(Leg::neededToClear).map(Leg::name).collect(Collectors.joining(", "));
        return needed.isEmpty()
                ? display.text("production.policy.says", conditions)
                : display.text("production.policy.says.with-legs", conditions, needed);
    }

    private String atLeastTwo(int number, String key) {
        return number < 2 ? "" : display.text(key, number);
    }

    /** What the policy asks for and the legs as recorded, one copy each, don't give. */
    List<String> gaps(ClearingPolicy policy, List<Leg> legs, List<Place> places) {
        List<Leg> counted = legs.stream()
                .filter(leg -> leg.rendition() == Rendition.AS_RECORDED)
                .toList();
        int copies = Math.max(policy.provenCopies(), policy.items());
        boolean offSite = places.stream()
                .filter(Place::offSite)
                .anyMatch(
                        place -> counted.stream().anyMatch(leg -> leg.placeId().equals(place.id())));
        return Stream.of(
                        gap("production.policy.gap.copies", copies, counted.size()),
                        gapAboveOne(
                                "production.policy.gap.kinds", policy.mediaKinds(), distinct(counted, Leg::mediaKind)),
                        gapAboveOne("production.policy.gap.places", policy.places(), distinct(counted, Leg::placeId)),
                        policy.offSite() && !offSite ? display.text("production.policy.gap.off-site") : "")
                .filter(gap -> !gap.isEmpty())
                .toList();
    }

    private String gap(String key, long asked, long given) {
        return given >= asked ? "" : display.text(key, asked, given);
    }

    /** Of one kind and at one place is any copy. */
    private String gapAboveOne(String key, long asked, long given) {
        return asked < 2 ? "" : gap(key, asked, given);
    }

    private static long distinct(List<Leg> legs, Function<Leg, ?> property) {
        return legs.stream().map(property).distinct().count();
    }
}

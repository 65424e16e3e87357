package rollbook.production;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
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
    String overview(ClearingRules rules) {
        return rules.legs().isEmpty()
                ? display.text("production.settings.sentence.none")
                : display.text("production.settings.sentence", rules.legs().size(), policy(rules, MediaKind.CARD));
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

    /** When a medium of a kind may be cleared. */
    String policy(ClearingRules rules, MediaKind subject) {
        ClearingPolicy policy = rules.policy(subject);
        String conditions = Stream.of(
                        display.text("production.policy.says.copies", policy.provenCopies()),
                        atLeastTwo(policy.items(), "production.policy.says.items"),
                        atLeastTwo(policy.mediaKinds(), "production.policy.says.kinds"),
                        atLeastTwo(policy.places(), "production.policy.says.places"),
                        policy.offSite() ? display.text("production.policy.says.off-site") : "",
                        checked(policy.checkedWithinDays()))
                .filter(condition -> !condition.isEmpty())
                .collect(Collectors.joining(", "));
        String needed = rules.neededLegs(subject).stream().map(Leg::name).collect(Collectors.joining(", "));
        String when = needed.isEmpty()
                ? display.text("production.policy.says." + subject.name(), conditions)
                : display.text("production.policy.says.with-legs." + subject.name(), conditions, needed);
        return Stream.of(
                        when,
                        policy.sourceHashNeeded() ? "" : display.text("production.policy.says.no-source-hash"),
                        policy.roundTripNeeded() ? "" : display.text("production.policy.says.no-round-trip"))
                .filter(sentence -> !sentence.isEmpty())
                .collect(Collectors.joining(" "));
    }

    /** When media may be cleared, by their kind. */
    Map<MediaKind, String> policies(ClearingRules rules) {
        Map<MediaKind, String> policies = new EnumMap<>(MediaKind.class);
        rules.policies().keySet().forEach(subject -> policies.put(subject, policy(rules, subject)));
        return policies;
    }

    /** What held and what holds from now on: for the record. */
    String change(ClearingRules before, ClearingRules after, MediaKind subject) {
        return display.text("production.policy.change", policy(before, subject), policy(after, subject));
    }

    private String checked(@Nullable Integer withinDays) {
        return withinDays == null ? "" : display.text("production.policy.says.checked", withinDays);
    }

    private String atLeastTwo(int number, String key) {
        return number < 2 ? "" : display.text(key, number);
    }

    /**
     * What the policy asks for and the legs, one copy each, don't give. Of the legs that come back into use one is the
     * medium that is cleared, if it isn't a card.
     */
    List<String> gaps(ClearingRules rules, MediaKind subject, List<Place> places) {
        ClearingPolicy policy = rules.policy(subject);
        List<Leg> counted = new ArrayList<>(rules.legs());
        counted.stream()
                .filter(leg -> leg.mediaKind() == subject && leg.returnsAfterDays() != null)
                .findFirst()
                .ifPresent(counted::remove);
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

package rollbook.shipment;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.validation.BindingResult;
import rollbook.inventory.Condition;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.label.CodeList;
import rollbook.production.Membership;
import rollbook.production.Places;
import rollbook.web.Choice;

/** Understands what somebody writes of a shipment, and says at each field what is wrong with it. */
@Component
class FormReading {
    static final int MOST_ITEMS = 200;
    private static final int NAMED = 3;

    private final MediaItems items;
    private final Places places;
    private final Clock clock;

    FormReading(MediaItems items, Places places, Clock clock) {
        this.items = items;
        this.places = places;
        this.clock = clock;
    }

    List<Choice> places(Membership membership) {
        return places.list(membership.productionId()).stream()
                .map(place -> new Choice(place.id().toString(), place.name()))
                .toList();
    }

    /** Where the first of the items is; null if there is none. */
    @Nullable
    UUID placeOf(Membership membership, String typed) {
        try {
            return items
                    .findByCodes(
                            membership.productionId(),
                            CodeList.read(typed).stream().limit(1).toList())
                    .stream()
                    .map(MediaItem::placeId)
                    .findFirst()
                    .orElse(null);
        } catch (CodeList.Unclear unclear) {
            return null;
        }
    }

    /** The items that are meant, ordered by code; what is wrong is noted at {@code items}. */
    List<MediaItem> items(Membership membership, String typed, BindingResult result) {
        List<String> codes;
        try {
            codes = CodeList.read(typed);
        } catch (CodeList.Unclear unclear) {
            reject(result, "items", "shipment.problem.run", unclear.from(), unclear.to());
            return List.of();
        }
        if (codes.isEmpty()) {
            reject(result, "items", "shipment.problem.no-items");
            return List.of();
        }
        if (codes.size() > MOST_ITEMS) {
            reject(result, "items", "shipment.problem.too-many", codes.size(), MOST_ITEMS);
            return List.of();
        }
        List<MediaItem> known = items.findByCodes(membership.productionId(), codes).stream()
                .sorted(Comparator.comparing(item -> item.code().toUpperCase(Locale.ROOT)))
                .toList();
        Set<String> found =
                known.stream().map(item -> item.code().toUpperCase(Locale.ROOT)).collect(Collectors.toSet());
        tell(
                result,
                "shipment.problem.unknown",
                codes.stream().filter(code -> !found.contains(code)).toList());
        tell(
                result,
                "shipment.problem.lost",
                codes(known.stream()
                        .filter(item -> item.condition() == Condition.LOST)
                        .toList()));
        tell(
                result,
                "shipment.problem.gone",
                codes(known.stream()
                        .filter(item -> item.condition() == Condition.RETIRED || item.condition() == Condition.RETURNED)
                        .toList()));
        return known;
    }

    /** That they are all where they leave from. */
    void requireAt(List<MediaItem> leaving, UUID placeId, BindingResult result) {
        leaving.stream()
                .filter(item -> !item.placeId().equals(placeId))
                .findFirst()
                .ifPresent(item -> {
                    if (!result.hasFieldErrors("items")) {
                        reject(result, "items", "shipment.problem.elsewhere", item.code(), item.placeName());
                    }
                });
    }

    boolean isPlace(Membership membership, @Nullable UUID placeId) {
        return places.list(membership.productionId()).stream()
                .anyMatch(place -> place.id().equals(placeId));
    }

    /** Null if none is given; one that has passed is noted at {@code expectedBy}. */
    @Nullable
    Instant expected(Membership membership, @Nullable LocalDateTime typed, BindingResult result) {
        if (typed == null) {
            return null;
        }
        Instant expected = typed.atZone(membership.zone()).toInstant();
        if (!expected.isAfter(clock.instant())) {
            reject(result, "expectedBy", "shipment.problem.passed");
        }
        return expected;
    }

    /** What is wrong with several items is told of the first few. */
    private static void tell(BindingResult result, String key, List<String> codes) {
        if (!codes.isEmpty()) {
            String named = String.join(", ", codes.subList(0, Math.min(NAMED, codes.size())));
            reject(result, "items", key, named, Math.max(0, codes.size() - NAMED), codes.size());
        }
    }

    private static List<String> codes(List<MediaItem> some) {
        return some.stream().map(MediaItem::code).toList();
    }

    static void reject(BindingResult result, String field, String key, Object... args) {
        result.rejectValue(field, key, args, null);
    }
}

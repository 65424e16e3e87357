package rollbook.offload;

import jakarta.validation.constraints.NotNull;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * An offload to begin.
 *
 * @param legs one entry for each leg of the copy plan, in its order
 * @param extra a destination outside the plan, if any
 */
record StartForm(
        @NotNull @Nullable UUID reader,
        @Nullable UUID adapter,
        List<LegForm> legs,
        @Nullable UUID extra) {

    StartForm {
        legs = legs == null ? List.of() : legs.stream().filter(Objects::nonNull).toList();
    }

    List<Offloads.Destination> destinations() {
        Stream<Offloads.Destination> planned = legs.stream()
                .filter(leg -> leg.item() != null)
                .map(leg -> new Offloads.Destination(leg.item(), leg.leg()));
        return Stream.concat(planned, Stream.ofNullable(extra).map(item -> new Offloads.Destination(item, null)))
                .toList();
    }

    /** The fields that name a medium which a field before them names already. */
    List<String> repeated() {
        List<String> fields = new ArrayList<>();
        Set<UUID> named = new HashSet<>();
        for (int i = 0; i < legs.size(); i++) {
            UUID item = legs.get(i).item();
            if (item != null && !named.add(item)) {
                fields.add("legs[" + i + "].item");
            }
        }
        if (extra != null && named.contains(extra)) {
            fields.add("extra");
        }
        return fields;
    }

    /** @param item where this leg's copy goes, or null for none this time */
    record LegForm(@Nullable UUID leg, @Nullable UUID item) {}
}

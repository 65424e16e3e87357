package rollbook.post;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/** A medium of a set, as it was when the set was made. */
record SetMedium(UUID itemId, String itemCode, String place, List<SetRoll> rolls) {

    /** By their codes. */
    static List<SetMedium> of(List<SetRoll> rolls) {
        Map<UUID, List<SetRoll>> byItem = new LinkedHashMap<>();
        rolls.stream()
                .filter(roll -> roll.itemId() != null)
                .forEach(
                        roll -> byItem.computeIfAbsent(Objects.requireNonNull(roll.itemId()), item -> new ArrayList<>())
                                .add(roll));
        return byItem.entrySet().stream()
                .map(item -> {
                    SetRoll first = item.getValue().get(0);
                    return new SetMedium(
                            item.getKey(),
                            Objects.requireNonNull(first.itemCode()),
                            Objects.requireNonNull(first.place()),
                            item.getValue());
                })
                .sorted((one, other) -> one.itemCode().compareTo(other.itemCode()))
                .toList();
    }

    /** The rolls that no medium of the set held proven: of each what came nearest to it is told. */
    static List<SetRoll> gaps(List<SetRoll> rolls) {
        Set<UUID> proven =
                rolls.stream().filter(SetRoll::proven).map(SetRoll::rollId).collect(Collectors.toSet());
        return rolls.stream().filter(roll -> !proven.contains(roll.rollId())).toList();
    }

    public String codes() {
        return rolls.stream().map(SetRoll::rollCode).collect(Collectors.joining(", "));
    }
}

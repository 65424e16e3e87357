package rollbook.hire;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rollbook.production.MediaKind;

/** The items that an entry about an agreement may name. */
record Candidates(List<Hired> items) {

    /**
     * Items that are alike, so that one rate holds for them.
     *
     * @param like one of them, by which a form says whose rate it is
     */
    record Model(UUID like, MediaKind kind, String model, List<Hired> items) {
        boolean has(UUID itemId) {
            return items.stream().anyMatch(hired -> hired.item().id().equals(itemId));
        }
    }

    List<Model> models() {
        return items.stream()
                .collect(Collectors.groupingBy(
                        hired -> List.of(hired.item().kind(), hired.item().model()),
                        LinkedHashMap::new,
                        Collectors.toList()))
                .values()
                .stream()
                .map(alike -> new Model(
                        alike.get(0).item().id(),
                        alike.get(0).item().kind(),
                        alike.get(0).item().model(),
                        alike))
                .toList();
    }

    /** In the order in which a form has them, null for one that isn't there any more; then those that it hasn't. */
    List<@Nullable Model> inOrderOf(List<ModelForm> forms) {
        List<Model> all = models();
        List<@Nullable Model> ordered = new ArrayList<>();
        for (ModelForm form : forms) {
            ordered.add(all.stream()
                    .filter(model -> form.like() != null && model.has(form.like()))
                    .filter(model -> !ordered.contains(model))
                    .findFirst()
                    .orElse(null));
        }
        all.stream().filter(model -> !ordered.contains(model)).forEach(ordered::add);
        return ordered;
    }

    Optional<Hired> ofCode(String code) {
        return items.stream()
                .filter(hired -> hired.item().code().equalsIgnoreCase(code))
                .findFirst();
    }
}

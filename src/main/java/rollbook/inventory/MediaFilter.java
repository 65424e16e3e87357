package rollbook.inventory;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import rollbook.production.MediaKind;

/**
 * Which items a list shows. It comes from the address, so what it doesn't understand it passes over.
 *
 * @param kind null for all kinds
 * @param text found in code, serial number, model, supplier, place or holder; empty for all
 */
public record MediaFilter(@Nullable MediaKind kind, State state, String text) {
    /** How items are told apart on the list; the conditions are SQL on i (the item) and p (its place). */
    public enum State {
        /** All that the production has, lost things included. */
        PRESENT("i.condition not in ('RETIRED', 'RETURNED')"),
        BLANK("i.condition = 'GOOD' and i.card_state = 'BLANK'"),
        IN_CAMERA("i.condition = 'GOOD' and i.card_state = 'IN_CAMERA'"),
        EXPOSED("i.condition = 'GOOD' and i.card_state = 'EXPOSED'"),
        COPYING("i.condition = 'GOOD' and i.card_state = 'COPYING'"),
        HELD("i.condition = 'GOOD' and i.card_state = 'HELD'"),
        CLEAR_TO_ERASE("i.condition = 'GOOD' and i.card_state = 'CLEAR_TO_ERASE'"),
        GOOD("i.condition = 'GOOD' and i.card_state is null"),
        QUARANTINED("i.condition = 'QUARANTINED'"),
        AWAY("i.condition = 'GOOD' and p.off_site"),
        LOST("i.condition = 'LOST'"),
        RETIRED("i.condition = 'RETIRED'"),
        RETURNED("i.condition = 'RETURNED'"),
        /** All that was ever registered. */
        ALL("true");

        private final String condition;

        State(String condition) {
            this.condition = condition;
        }

        String key() {
            return switch (this) {
                case PRESENT, ALL -> "inventory.filter." + name();
                case AWAY -> "web.card-state.AWAY";
                default -> ItemState.valueOf(name()).key();
            };
        }
    }

    public static MediaFilter of(@Nullable String kind, @Nullable String state, @Nullable String text) {
        return new MediaFilter(
                constant(MediaKind.values(), kind, null),
                constant(State.values(), state, State.PRESENT),
                text == null ? "" : text.strip().replaceAll("\\p{Cntrl}", ""));
    }

    String sql() {
        return " and " + state.condition
                + (kind == null ? "" : " and i.kind = :kind")
                + (text.isEmpty()
                        ? ""
                        : " and position(:text in lower(concat_ws(' ', i.code, i.serial, i.model, i.supplier, p.name, i.holder))) > 0");
    }

    Map<String, String> sqlParameters() {
        Map<String, String> parameters = new LinkedHashMap<>();
        if (kind != null) {
            parameters.put("kind", kind.name());
        }
        if (!text.isEmpty()) {
            parameters.put("text", text.toLowerCase(Locale.ROOT));
        }
        return parameters;
    }

    private static <E extends Enum<E>> @Nullable E constant(E[] values, @Nullable String name, @Nullable E otherwise) {
        return Arrays.stream(values)
                .filter(value -> value.name().equalsIgnoreCase(name))
                .findFirst()
                .orElse(otherwise);
    }
}

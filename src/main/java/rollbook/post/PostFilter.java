package rollbook.post;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.web.util.UriComponentsBuilder;

/**
 * Which rolls the list shows. It comes from the address, so what it doesn't understand it passes over.
 *
 * @param state null for all
 * @param open only rolls that aren't proven at post
 * @param text found in the roll's, camera's or medium's code; empty for all
 */
record PostFilter(@Nullable PostState state, boolean open, String text) {
    static final String OPEN = "OPEN";

    static PostFilter of(@Nullable String state, @Nullable String text) {
        return new PostFilter(
                Arrays.stream(PostState.values())
                        .filter(one -> one.name().equalsIgnoreCase(state))
                        .findFirst()
                        .orElse(null),
                OPEN.equalsIgnoreCase(state),
                text == null ? "" : text.strip().replaceAll("\\p{Cntrl}", ""));
    }

    public boolean narrows() {
        return state != null || open || !text.isEmpty();
    }

    /** The state as it stands in the address; empty for all. */
    public String stateValue() {
        return open ? OPEN : state == null ? "" : state.name();
    }

    boolean shows(RollAtPost roll) {
        return (state == null || roll.state() == state)
                && !(open && roll.state().isDone())
                && (text.isEmpty() || contains(roll));
    }

    private boolean contains(RollAtPost roll) {
        String wanted = text.toUpperCase(Locale.ROOT);
        return roll.roll().code().toUpperCase(Locale.ROOT).contains(wanted)
                || roll.copies().stream()
                        .anyMatch(copy ->
                                copy.copy().itemCode().toUpperCase(Locale.ROOT).contains(wanted));
    }

    /** An address with the filter. */
    String address(String path) {
        UriComponentsBuilder address = UriComponentsBuilder.fromPath(path);
        Map<String, String> parameters = new LinkedHashMap<>();
        if (!stateValue().isEmpty()) {
            parameters.put("state", stateValue());
        }
        if (!text.isEmpty()) {
            parameters.put("q", text);
        }
        parameters.forEach((name, value) -> address.queryParam(name, "{" + name + "}"));
        return address.encode().buildAndExpand(parameters).toUriString();
    }

    /** The states in which rolls are, the worst first. */
    static Set<PostState> occurring(PostBook book) {
        Set<PostState> states = EnumSet.noneOf(PostState.class);
        book.rolls().forEach(roll -> states.add(roll.state()));
        return states;
    }
}

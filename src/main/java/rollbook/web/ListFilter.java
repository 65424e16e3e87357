package rollbook.web;

import java.util.List;

/**
 * A filter of a list, with what the address asks of it.
 *
 * @param any the text of the choice that lets everything through
 * @param value empty if it lets everything through
 * @param shown the value in words
 * @param without the address of the list without it
 */
public record ListFilter(
        String name,
        String label,
        Kind kind,
        String any,
        List<Choice> choices,
        String value,
        String shown,
        String without) {

    /** How a filter is set. */
    public enum Kind {
        CHOICE,
        TEXT,
        DATE
    }

    public boolean narrows() {
        return !value.isEmpty();
    }

    ListFilter droppedBy(String address) {
        return new ListFilter(name, label, kind, any, choices, value, shown, address);
    }
}

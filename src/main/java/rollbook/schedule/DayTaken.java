package rollbook.schedule;

import java.util.List;

/** A date or number that a day can't have: the form field it belongs to, the text that says why, and its arguments. */
public class DayTaken extends RuntimeException {
    private final String field;
    private final String messageKey;
    private final transient List<Object> arguments;

    DayTaken(String field, String messageKey, Object... arguments) {
        super(field + ": " + messageKey + " " + List.of(arguments));
        this.field = field;
        this.messageKey = messageKey;
        this.arguments = List.of(arguments);
    }

    public String field() {
        return field;
    }

    public String messageKey() {
        return messageKey;
    }

    public List<Object> arguments() {
        return arguments;
    }
}

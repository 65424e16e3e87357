package rollbook.recording;

import java.util.List;

/** A value that no recording format can have: the form field it belongs to, the text that says why, and its arguments. */
public class InvalidFormat extends IllegalArgumentException {

    private final String field;
    private final String messageKey;
    private final transient List<Object> arguments;

    public InvalidFormat(String field, String messageKey, Object... arguments) {
        super(field + ": " + messageKey + " " + List.of(arguments));
        this.field = field;
        this.messageKey = messageKey;
        this.arguments = List.of(arguments);
    }

    /** A whole number outside its bounds. */
    static void requireWithin(String field, long value, long least, long most) {
        if (value < least || value > most) {
            throw new InvalidFormat(field, "recording.invalid.range", least, most);
        }
    }

    /** The name of the input, such as {@code bitsPerPhotosite}. */
    public String field() {
        return field;
    }

    /** A key of {@code messages/recording.properties}. */
    public String messageKey() {
        return messageKey;
    }

    public List<Object> arguments() {
        return arguments;
    }
}

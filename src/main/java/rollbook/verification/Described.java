package rollbook.verification;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What a person says that documents describe, as one choice of a form: nothing said, the card itself, or a medium.
 *
 * @param itemId the medium, if it is a copy
 */
record Described(@Nullable Subject subject, @Nullable UUID itemId) {
    static final Described UNSAID = new Described(null, null);
    static final Described CARD = new Described(Subject.CARD, null);

    static Described copyOn(UUID itemId) {
        return new Described(Subject.COPY, itemId);
    }

    /** Anything that is no choice of the form reads as nothing said. */
    static Described of(@Nullable String value) {
        if (value == null || value.isBlank()) {
            return UNSAID;
        }
        if (value.equals(Subject.CARD.name())) {
            return CARD;
        }
        try {
            return copyOn(UUID.fromString(value));
        } catch (IllegalArgumentException e) {
            return UNSAID;
        }
    }

    /** The choice's value in the form. */
    public String value() {
        if (subject == null) {
            return "";
        }
        return itemId == null ? subject.name() : itemId.toString();
    }
}

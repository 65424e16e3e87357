package rollbook.production;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A kind of thing that people call by a code. The code box asks all kinds in one statement, so each only gives its part of it. */
public interface CodeKind {
    /**
     * A select of all things of {@code :production}, with the columns
     * <ul>
     *   <li>{@code id} (uuid);
     *   <li>{@code what}: the message that says what it is;
     *   <li>{@code code} (text): what people call it, or its number;
     *   <li>{@code also} (text): another name of it, empty if it has none;
     *   <li>{@code detail} (text): what tells it from others, in its own words, may be empty;
     *   <li>{@code on_date} (date): its day, may be null;
     *   <li>{@code state}: the message that words how it stands, empty if there is nothing to say;
     *   <li>{@code past} (boolean): whether it is gone, so that one of the same name that is here comes first.
     * </ul>
     */
    String rows();

    /** The message that makes the name of the number that {@code code} is then, such as "Order {0}"; null if it is a name. */
    default @Nullable String numbered() {
        return null;
    }

    /** The thing's page, as {@link Membership#path} takes it. */
    String page(UUID id);
}

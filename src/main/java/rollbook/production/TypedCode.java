package rollbook.production;

import java.util.Optional;
import java.util.UUID;

/** Knows the codes of some of a production's things: whoever types one into the box goes to its page. */
public interface TypedCode {
    /** @return the page as {@link Membership#path} takes it; empty if this is no such code, or there is no such thing */
    Optional<String> page(UUID productionId, String typed);
}

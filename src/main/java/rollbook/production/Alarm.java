package rollbook.production;

import java.time.Instant;
import java.util.List;
import java.util.Set;

/**
 * Something is wrong and stays wrong until somebody sees to it.
 *
 * @param key known by nothing else in the production; the same for as long as this stands, another one if it ends and
 *     happens again
 * @param roles who must see to it; administrators hear of every alarm
 * @param messageKey the sentence that says what happened and what to do, with its {@code args}: texts and whole numbers
 * @param page of the production that leads to the thing, such as {@code rolls/…}, as in {@link Membership#path}
 * @param since when it began
 */
public record Alarm(String key, Set<Role> roles, String messageKey, List<Object> args, String page, Instant since) {
    public Alarm {
        roles = Set.copyOf(roles);
        args = List.copyOf(args);
    }

    /** Whether it concerns somebody with these roles. */
    public boolean concerns(Set<Role> theirs) {
        return theirs.contains(Role.ADMINISTRATOR) || roles.stream().anyMatch(theirs::contains);
    }
}

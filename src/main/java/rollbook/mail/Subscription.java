package rollbook.mail;

import java.util.EnumSet;
import java.util.Set;
import rollbook.production.Role;

/**
 * What a member is told of a production by mail.
 *
 * @param digest how things stand, after each day that was wrapped
 * @param alarms at once what is wrong
 * @param weekly what the week brings, on Monday morning
 * @param muted nothing for now, whatever is chosen
 * @param version 0 while the member has chosen nothing
 */
record Subscription(boolean digest, boolean alarms, boolean weekly, boolean muted, int version) {
    private static final Set<Role> AT_WORK = EnumSet.of(Role.WRANGLER, Role.OFFICE, Role.POST, Role.ADMINISTRATOR);
    private static final Set<Role> IN_THE_OFFICE = EnumSet.of(Role.OFFICE, Role.ADMINISTRATOR);

    /** What their roles suggest. */
    static Subscription usual(Set<Role> roles) {
        boolean works = roles.stream().anyMatch(AT_WORK::contains);
        return new Subscription(works, works, roles.stream().anyMatch(IN_THE_OFFICE::contains), false, 0);
    }

    boolean wants(Kind kind) {
        return !muted
                && switch (kind) {
                    case CONFIRMATION -> true;
                    case DIGEST -> digest;
                    case ALARM -> alarms;
                    case WEEKLY -> weekly;
                };
    }

    Subscription without(Kind kind) {
        return new Subscription(
                digest && kind != Kind.DIGEST,
                alarms && kind != Kind.ALARM,
                weekly && kind != Kind.WEEKLY,
                muted,
                version);
    }
}

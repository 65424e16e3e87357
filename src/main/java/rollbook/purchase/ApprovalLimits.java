package rollbook.purchase;

import org.jspecify.annotations.Nullable;
import rollbook.production.Membership;
import rollbook.production.Role;

/**
 * Up to which amount people of a role approve orders: null for any, zero for none. An administrator approves any.
 *
 * @param version for noticing that somebody else changed them meanwhile; -1 before they are kept
 */
public record ApprovalLimits(
        @Nullable Long officeMinorUnits,
        @Nullable Long wranglerMinorUnits,
        @Nullable Long postMinorUnits,
        int version) {
    static final int NOT_KEPT = -1;

    /** The office approves any, others none: common practice, no source. */
    static final ApprovalLimits USUAL = new ApprovalLimits(null, 0L, 0L, NOT_KEPT);

    /** Whether this person may approve an order of that amount. */
    boolean allow(Membership person, long amountMinorUnits) {
        return person.mayAdminister() || person.roles().stream().anyMatch(role -> allow(role, amountMinorUnits));
    }

    /** Whether people of this role may. */
    boolean allow(Role role, long amountMinorUnits) {
        return switch (role) {
            case ADMINISTRATOR -> true;
            case OFFICE -> within(officeMinorUnits, amountMinorUnits);
            case WRANGLER -> within(wranglerMinorUnits, amountMinorUnits);
            case POST -> within(postMinorUnits, amountMinorUnits);
            case READER -> false;
        };
    }

    private static boolean within(@Nullable Long limit, long amount) {
        return limit == null || limit > 0 && amount <= limit;
    }
}

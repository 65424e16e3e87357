package rollbook.production;

import java.time.ZoneId;
import java.util.Set;
import java.util.UUID;
import rollbook.audit.Act;

/**
 * A signed-in person in one production. Handler methods under {@code /p/{production}} take it as a parameter; it exists
 * only if the person belongs to that production, so whatever is looked up through it cannot cross into another one.
 */
public record Membership(
        UUID productionId,
        String code,
        String productionName,
        ZoneId zone,
        String currency,
        UUID personId,
        String personName,
        Set<Role> roles) {

    public boolean may(Role... allowed) {
        if (roles.contains(Role.ADMINISTRATOR)) {
            return true;
        }
        for (Role role : allowed) {
            if (roles.contains(role)) {
                return true;
            }
        }
        return false;
    }

    /** Whether the person may do the work of the set; for templates. */
    public boolean mayWrangle() {
        return may(Role.WRANGLER);
    }

    /** Whether the person may do the work of the office; for templates. */
    public boolean mayKeepBooks() {
        return may(Role.OFFICE);
    }

    /** Whether the person may ask that a card be cleared without proof; for templates. */
    public boolean mayAskForOverride() {
        return may(Role.WRANGLER, Role.OFFICE, Role.POST);
    }

    /** Whether the person may clear drives, arrays and tapes; for templates. */
    public boolean mayClearMedia() {
        return may(Role.WRANGLER, Role.POST);
    }

    /** Whether the person may propose orders; for templates. */
    public boolean mayProposeOrders() {
        return may(Role.WRANGLER, Role.OFFICE, Role.POST);
    }

    /** Whether the person may keep scenarios of shooting days; for templates. */
    public boolean mayKeepScenarios() {
        return may(Role.WRANGLER, Role.OFFICE, Role.POST);
    }

    /** Whether the person may send media, hand them over and confirm that they have come; for templates too. */
    public boolean mayShip() {
        return may(Role.WRANGLER, Role.OFFICE, Role.POST);
    }

    public boolean mayAdminister() {
        return may(Role.ADMINISTRATOR);
    }

    /** The path of a page of this production, such as {@code path("rolls")}. */
    public String path(String page) {
        return "/p/" + code + "/" + page;
    }

    public Signatory signatory() {
        return new Signatory(productionId, personId, personName);
    }

    /** Something this person did in this production, ready for the record. */
    public Act act(String action, String subjectKind, String subjectCode, String detail) {
        return new Act(productionId, personId, personName, action, subjectKind, subjectCode, detail);
    }
}

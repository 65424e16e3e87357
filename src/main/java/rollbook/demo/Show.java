package rollbook.demo;

import java.time.ZoneId;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import rollbook.production.Membership;

/** The demo production as it was prepared: the ids of all that the story speaks of, by the names that it uses. */
record Show(
        UUID productionId,
        Map<Account, UUID> people,
        Map<String, UUID> places,
        Map<String, UUID> legs,
        Map<Shot, UUID> formats,
        UUID mainUnit,
        UUID secondUnit,
        Map<Character, UUID> cameras,
        Map<String, UUID> items,
        List<UUID> mainDays,
        List<UUID> secondDays) {

    static final String CODE = "TIDECLERK";
    static final String TITLE = "The Tide Clerk";
    static final ZoneId ZONE = ZoneId.of("Europe/Lisbon");
    static final String CURRENCY = "EUR";

    Membership as(Account account) {
        return membership(productionId, account, people.get(account));
    }

    static Membership membership(UUID productionId, Account account, UUID personId) {
        return new Membership(
                productionId, CODE, TITLE, ZONE, CURRENCY, personId, account.displayName, EnumSet.of(account.role));
    }

    UUID item(String code) {
        UUID id = items.get(code);
        if (id == null) {
            throw new IllegalArgumentException("The demo has no item " + code);
        }
        return id;
    }
}

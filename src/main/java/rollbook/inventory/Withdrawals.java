package rollbook.inventory;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.production.Membership;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/**
 * Strikes out items that were registered by mistake and never used. They stay to be read, retired and under another
 * code, so that their codes and serial numbers can be given again.
 */
@Service
public class Withdrawals {
    /** Stands behind the code of a struck-out item; a number follows if that is taken as well. */
    private static final String STRUCK = ".OUT";

    private static final int LONGEST_CODE = 32;

    private final JdbcClient jdbc;
    private final MediaItems items;
    private final Custody custody;
    private final ObjectProvider<ItemUse> uses;

    Withdrawals(JdbcClient jdbc, MediaItems items, Custody custody, ObjectProvider<ItemUse> uses) {
        this.jdbc = jdbc;
        this.items = items;
        this.custody = custody;
        this.uses = uses;
    }

    /**
     * Strikes out all of them or none.
     *
     * @param reason for the chains of custody
     * @throws NotFoundException if this production hasn't all of them
     * @throws Refusal naming those that were used, moved or doubted since they were registered
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public void strikeOut(Membership by, Collection<UUID> itemIds, String reason) {
        List<MediaItem> struck = lock(by.productionId(), itemIds);
        Set<UUID> used = used(by.productionId(), itemIds);
        List<String> codes = struck.stream()
                .filter(item -> used.contains(item.id())
                        || item.condition() != Condition.GOOD
                        || (item.cardState() != null && item.cardState() != CardState.BLANK))
                .map(MediaItem::code)
                .toList();
        if (!codes.isEmpty()) {
            throw new Refusal("inventory.refused.used", String.join(", ", codes), codes.size());
        }
        Set<String> taken = new HashSet<>(jdbc.sql("select upper(code) from inventory_item where production_id = ?")
                .param(by.productionId())
                .query(String.class)
                .list());
        for (MediaItem item : struck) {
            custody.enter(by.signatory(), item, CustodyAct.WITHDRAWN, item.placeId(), item.holder(), reason);
            rename(by.productionId(), item, free(item.code(), taken));
        }
    }

    /** In the order in which everybody locks items. */
    private List<MediaItem> lock(UUID productionId, Collection<UUID> itemIds) {
        List<MediaItem> locked = new ArrayList<>();
        itemIds.stream()
                .map(id -> items.get(productionId, id))
                .sorted(Comparator.comparing(MediaItem::code))
                .forEach(item -> locked.add(items.lock(productionId, item.id())));
        return locked;
    }

    /** Each item has one entry in its chain from being registered; a second one means that something happened to it. */
    private Set<UUID> used(UUID productionId, Collection<UUID> itemIds) {
        Stream<UUID> moved = itemIds.isEmpty()
                ? Stream.of()
                : jdbc
                        .sql("""
                                select item_id from inventory_custody
                                where production_id = :production and item_id in (:items)
                                group by item_id having count(*) > 1
                                """)
                        .param("production", productionId)
                        .param("items", itemIds)
                        .query(UUID.class)
                        .list()
                        .stream();
        return Stream.concat(moved, uses.orderedStream().flatMap(use -> use.used(productionId, itemIds).stream()))
                .collect(Collectors.toSet());
    }

    private static String free(String code, Set<String> taken) {
        for (int number = 1; ; number++) {
            String behind = number == 1 ? STRUCK : STRUCK + number;
            String candidate = code.substring(0, Math.min(code.length(), LONGEST_CODE - behind.length())) + behind;
            if (taken.add(candidate.toUpperCase(Locale.ROOT))) {
                return candidate;
            }
        }
    }

    private void rename(UUID productionId, MediaItem item, String code) {
        try {
            jdbc.sql("update inventory_item set code = ?, version = version + 1 where production_id = ? and id = ?")
                    .params(code, productionId, item.id())
                    .update();
        } catch (DuplicateKeyException meanwhile) {
            throw new Refusal("inventory.refused.changed-meanwhile", item.code());
        }
    }
}

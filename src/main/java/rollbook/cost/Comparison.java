package rollbook.cost;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import rollbook.hire.HiredItemCost;
import rollbook.purchase.ItemsAtCost.ItemAtCost;
import rollbook.supplier.CatalogueItem;
import rollbook.supplier.Price;

/**
 * What is hired against what buying it today would cost.
 *
 * @param code of the agreement, or of the item if there is none
 * @param hireMinorUnits from the first day to the date on which it is due back
 * @param buyMinorUnits at the price of today
 */
record Comparison(String code, String model, int items, long hireMinorUnits, long buyMinorUnits) {

    /** Of what is still hired and can be bought too, the cheapest offer of the same kind and model. */
    static List<Comparison> all(
            List<HiredItemCost> hired, List<ItemAtCost> registered, List<CatalogueItem> offered, LocalDate today) {
        Map<UUID, ItemAtCost> items =
                registered.stream().collect(Collectors.toMap(ItemAtCost::id, Function.identity()));
        Map<Model, Long> prices = new HashMap<>();
        for (CatalogueItem offer : offered) {
            if (!offer.archived()) {
                offer.prices()
                        .on(today)
                        .map(Price::itemMinorUnits)
                        .ifPresent(price -> prices.merge(
                                new Model(
                                        offer.details().kind(), offer.details().model()),
                                price,
                                Math::min));
            }
        }
        List<Comparison> comparisons = new ArrayList<>();
        Map<String, List<HiredItemCost>> groups = hired.stream()
                .filter(item ->
                        item.endedOn() == null && item.committedMinorUnits() > 0 && items.containsKey(item.itemId()))
                .collect(Collectors.groupingBy(
                        item -> item.agreementCode() + "\n"
                                + new Model(
                                        item.kind(), items.get(item.itemId()).model()),
                        TreeMap::new,
                        Collectors.toList()));
        for (List<HiredItemCost> group : groups.values()) {
            HiredItemCost first = group.get(0);
            ItemAtCost item = items.get(first.itemId());
            Long price = prices.get(new Model(item.kind(), item.model()));
            if (price != null) {
                comparisons.add(new Comparison(
                        first.agreementCode().isEmpty() ? item.code() : first.agreementCode(),
                        item.model(),
                        group.size(),
                        group.stream()
                                .mapToLong(HiredItemCost::committedMinorUnits)
                                .reduce(0, Math::addExact),
                        Math.multiplyExact(price, (long) group.size())));
            }
        }
        return comparisons;
    }
}

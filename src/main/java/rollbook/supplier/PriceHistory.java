package rollbook.supplier;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The prices of an item. Of two that are valid from the same date the one entered later counts: it corrects the other.
 *
 * @param entered in any order
 */
public record PriceHistory(List<Price> entered) {
    private static final Comparator<Price> OLDEST_FIRST =
            Comparator.comparing(Price::validFrom).thenComparing(Price::number);

    public PriceHistory {
        entered = entered.stream().sorted(OLDEST_FIRST).toList();
    }

    /** The price that is valid on a date; before the first one is, the first. */
    public Optional<Price> on(LocalDate date) {
        List<Price> counting = counting();
        return counting.stream()
                .filter(price -> !price.validFrom().isAfter(date))
                .reduce((earlier, later) -> later)
                .or(() -> counting.stream().findFirst());
    }

    /** The one that was valid before this one. */
    Optional<Price> before(Price price) {
        return counting().stream()
                .filter(other -> other.validFrom().isBefore(price.validFrom()))
                .reduce((earlier, later) -> later);
    }

    /** The first one that is valid only after a date. */
    Optional<Price> after(LocalDate date) {
        return counting().stream()
                .filter(price -> price.validFrom().isAfter(date))
                .filter(price -> on(date).filter(price::equals).isEmpty())
                .findFirst();
    }

    /** All, those too that were corrected. */
    List<Price> newestFirst() {
        return entered.stream().sorted(OLDEST_FIRST.reversed()).toList();
    }

    /** Whether another one entered later is valid from the same date. */
    boolean isCorrected(Price price) {
        return !counting().contains(price);
    }

    /** Without those that were corrected, oldest first. */
    private List<Price> counting() {
        return entered.stream()
                .filter(price -> entered.stream()
                        .noneMatch(other ->
                                other.validFrom().equals(price.validFrom()) && other.number() > price.number()))
                .toList();
    }
}

package rollbook.supplier;

import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.burndown.LeadTime;
import rollbook.ordering.Hire;
import rollbook.ordering.LearnedLeadTime;
import rollbook.web.Display;

/** Suppliers, prices and lead times in words. */
@Component
public class SupplierWords {
    private static final double HALF = 0.5;
    private static final double NINE_OF_TEN = 0.9;

    private final Display display;

    SupplierWords(Display display) {
        this.display = display;
    }

    /**
     * The lead time to count on, and what it rests on.
     *
     * @param deliveries how many it was learned from
     */
    public String leadTime(LeadTime leadTime, int deliveries) {
        return display.text("supplier.lead-time", leadTime.days(HALF), leadTime.days(NINE_OF_TEN), deliveries);
    }

    String leadTime(LearnedLeadTime learned) {
        return leadTime(learned.leadTime(), learned.deliveredAfter().size());
    }

    String stated(MediaSupplier supplier) {
        return display.text(
                "supplier.lead-time.stated",
                supplier.details().leadTimeWorkingDays(),
                supplier.details().slowLeadTimeWorkingDays());
    }

    /** To buy and to hire. */
    public String price(Price price, Currency currency) {
        Long item = price.itemMinorUnits();
        Hire hire = price.hire();
        return Stream.of(
                        item == null ? null : display.text("supplier.price.buy", display.money(item, currency)),
                        hire == null
                                ? null
                                : display.text(
                                        "supplier.price.hire",
                                        display.money(hire.weeklyRateMinorUnits(), currency),
                                        hire.minimumWeeks()))
                .filter(Objects::nonNull)
                .collect(Collectors.joining(", "));
    }

    /** What an item costs today, since when, how that differs from before, and what it will cost. */
    String prices(PriceHistory prices, LocalDate today, Currency currency) {
        Price now = prices.on(today).orElse(null);
        if (now == null) {
            return display.text("supplier.price.none");
        }
        String before = prices.before(now)
                .map(earlier -> display.text(
                        change(earlier, now), price(earlier, currency), display.shortDate(earlier.validFrom())))
                .orElse("");
        String after = prices.after(today)
                .map(later -> display.text(
                        "supplier.price.later", price(later, currency), display.shortDate(later.validFrom())))
                .orElse("");
        return Stream.of(
                        display.text(
                                now.validFrom().isAfter(today) ? "supplier.price.only-from" : "supplier.price.since",
                                price(now, currency),
                                display.shortDate(now.validFrom())),
                        before,
                        after)
                .filter(sentence -> !sentence.isEmpty())
                .collect(Collectors.joining(" "));
    }

    private static String change(Price before, Price now) {
        Long earlier = before.itemMinorUnits();
        Long later = now.itemMinorUnits();
        if (earlier == null || later == null || earlier.equals(later)) {
            return "supplier.price.before";
        }
        return later > earlier ? "supplier.price.dearer" : "supplier.price.cheaper";
    }

    /** How an order arrived. */
    String arrival(Punctuality.Arrival arrival) {
        Delivery delivery = arrival.delivery();
        int late = arrival.lateWorkingDays();
        if (delivery.completeOn() == null) {
            return late == 0
                    ? display.text("supplier.arrival.expected", delivery.came(), delivery.items())
                    : display.text("supplier.arrival.overdue", delivery.came(), delivery.items(), late);
        }
        String key =
                late == 0 ? "supplier.arrival.punctual" : late > 0 ? "supplier.arrival.late" : "supplier.arrival.early";
        return display.text(key, display.shortDate(delivery.completeOn()), Math.abs(late));
    }

    String country(@Nullable String code) {
        return code == null ? display.text("supplier.country.own") : new Locale("", code).getDisplayCountry(Locale.UK);
    }

    String workingDays(MediaSupplier supplier) {
        return supplier.details().workingDays().isEmpty()
                ? display.text("supplier.working-days.own")
                : supplier.details().workingDays().stream()
                        .sorted()
                        .map(day -> display.text("production.weekday." + day))
                        .collect(Collectors.joining(", "));
    }

    /** How many suppliers there are and what they offer. */
    String sentence(List<MediaSupplier> suppliers, List<CatalogueItem> items) {
        if (suppliers.isEmpty()) {
            return display.text("supplier.list.none");
        }
        long offered = items.stream().filter(item -> !item.archived()).count();
        return display.text("supplier.list.sentence", suppliers.size(), offered);
    }
}

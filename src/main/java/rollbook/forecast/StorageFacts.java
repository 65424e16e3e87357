package rollbook.forecast;

import java.util.ArrayList;
import java.util.List;
import org.springframework.stereotype.Component;
import rollbook.burndown.Band;
import rollbook.burndown.PoolOutlook;
import rollbook.ordering.Offer;
import rollbook.supplier.SupplierWords;
import rollbook.web.Display;

/** The figures of a leg's forecast, each with what it is made of, for the page. */
@Component
class StorageFacts {
    private final Display display;
    private final StorageWords words;
    private final SupplierWords supplierWords;

    StorageFacts(Display display, StorageWords words, SupplierWords supplierWords) {
        this.display = display;
        this.words = words;
        this.supplierWords = supplierWords;
    }

    /** A name and a value, and the exact bytes behind the value if there are any. */
    record Fact(String name, String value, String exact) {}

    List<Fact> of(LegForecast leg, ForecastInput.Leg input, ForecastInput all) {
        PoolOutlook pool = leg.outlook();
        List<Fact> facts = new ArrayList<>();
        facts.add(bytes("forecast.fact.room", pool.roomNowBytes()));
        facts.add(fact("forecast.fact.cover", cover(pool)));
        facts.add(fact("forecast.fact.chance", words.chance(pool.chanceOfRunningOut())));
        facts.add(fact("forecast.fact.demand", words.band(pool.neededBytes())));
        if (!input.reduction().equals(Reduction.NONE)) {
            facts.add(fact("forecast.fact.kept", kept(input.reduction())));
        }
        if (pool.waitingBytes() > 0) {
            facts.add(bytes("forecast.fact.waiting", pool.waitingBytes()));
        }
        long leaving = pool.points().stream()
                .mapToLong(PoolOutlook.Point::leavingBytes)
                .reduce(0, Math::addExact);
        if (leaving > 0) {
            facts.add(bytes("forecast.fact.leaving", leaving));
        }
        addBand(facts, "forecast.fact.shortfall", pool.shortfallBytes());
        addBand(facts, "forecast.fact.lost", pool.lostBytes());
        Integer returnAfterDays = input.pool().returnAfterDays();
        if (returnAfterDays != null) {
            facts.add(fact("forecast.fact.comes-back", display.text("forecast.comes-back", returnAfterDays)));
        }
        if (pool.overdueReturnBytes() > 0) {
            facts.add(bytes("forecast.fact.overdue-returns", pool.overdueReturnBytes()));
        }
        if (pool.overdueArrivalItems() > 0) {
            facts.add(
                    fact("forecast.fact.overdue-arrivals", display.text("forecast.items", pool.overdueArrivalItems())));
        }
        all.sourceOf(leg.legId())
                .ifPresent(source ->
                        addSource(facts, source, all.offerFor(leg.legId()).orElseThrow()));
        return facts;
    }

    private void addSource(List<Fact> facts, OfferSource source, Offer offer) {
        facts.add(fact(
                "forecast.fact.supply",
                display.text(
                        "forecast.supplied",
                        source.item(),
                        source.supplier(),
                        display.money(offer.itemPriceMinorUnits(), offer.currency()),
                        words.date(source.priceFrom()),
                        offer.packSize())));
        facts.add(fact(
                "forecast.fact.lead-time",
                supplierWords.leadTime(offer.supplier().leadTime(), source.deliveries())));
    }

    private String cover(PoolOutlook pool) {
        Band cover = pool.coverDays();
        return cover.p10() == cover.p90()
                ? display.text("forecast.cover", cover.p50(), pool.daysToCome())
                : display.text("forecast.cover.band", cover.p50(), cover.p10(), cover.p90(), pool.daysToCome());
    }

    private String kept(Reduction reduction) {
        return display.text(
                reduction.isMeasured() ? "forecast.kept.measured" : "forecast.kept.planned",
                display.figure(reduction.share().value()),
                reduction.rolls(),
                display.figure(reduction.planned().value()),
                Reduction.ROLLS_NEEDED);
    }

    private void addBand(List<Fact> facts, String key, Band band) {
        if (band.p90() > 0) {
            facts.add(fact(key, words.band(band)));
        }
    }

    private Fact bytes(String key, long bytes) {
        return new Fact(display.text(key), display.amount(bytes), display.exact(bytes));
    }

    private Fact fact(String key, String value) {
        return new Fact(display.text(key), value, "");
    }
}

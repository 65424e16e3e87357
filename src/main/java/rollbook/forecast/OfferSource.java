package rollbook.forecast;

import java.time.LocalDate;
import java.util.UUID;

/**
 * Where an offer comes from, as it was when the forecast was made.
 *
 * @param priceFrom since when its price is valid
 * @param statedUsualWorkingDays the lead time as the supplier states it
 * @param deliveries how many deliveries the lead time was learned from
 */
record OfferSource(
        UUID legId,
        String supplier,
        String item,
        LocalDate priceFrom,
        int statedUsualWorkingDays,
        int statedSlowWorkingDays,
        int deliveries) {

    static OfferSource of(SuppliedLeg leg) {
        return new OfferSource(
                leg.supply().legId(),
                leg.terms().supplier().name(),
                leg.details().model(),
                leg.terms().price().validFrom(),
                leg.terms().supplier().details().leadTimeWorkingDays(),
                leg.terms().supplier().details().slowLeadTimeWorkingDays(),
                leg.leadTime().deliveredAfter().size());
    }
}

package rollbook.mail;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.forecast.StorageOutlook;
import rollbook.inventory.HireReturn;
import rollbook.post.PostStanding;
import rollbook.production.Alarm;
import rollbook.purchase.PurchaseOrder;
import rollbook.schedule.ShootingDay;
import rollbook.verification.ProofSummary;
import rollbook.verification.Rechecks;

/**
 * How a production stands, for whoever is to be told.
 *
 * @param today in its zone
 * @param post what has come to post
 * @param outlook null without a forecast
 * @param orders those that wait for somebody or are still to come, the first expected first
 * @param hires hired items that are still here, by the date they are due back
 * @param costs what media cost, in a sentence
 * @param alarms those that stand, of all roles
 * @param days shooting days that are planned or being shot, in the order of their dates
 */
record Facts(
        LocalDate today,
        ProofSummary proof,
        PostStanding post,
        @Nullable StorageOutlook outlook,
        List<Ordered> orders,
        List<HireReturn> hires,
        Rechecks.Pressing rechecks,
        String costs,
        List<Alarm> alarms,
        List<ShootingDay> days) {

    /**
     * An order that isn't done with.
     *
     * @param supplierName empty while there is none
     * @param left how many of the items have not come yet
     * @param expectedOn null before it is placed
     * @param page that shows it
     */
    record Ordered(
            int number,
            String supplierName,
            PurchaseOrder.State state,
            int items,
            int left,
            @Nullable LocalDate expectedOn,
            String page) {}
}

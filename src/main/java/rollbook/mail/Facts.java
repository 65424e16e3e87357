package rollbook.mail;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.forecast.StorageOutlook;
import rollbook.inventory.HireReturn;
import rollbook.production.Alarm;
import rollbook.schedule.ShootingDay;
import rollbook.verification.ProofSummary;
import rollbook.verification.Rechecks;

/**
 * How a production stands, for whoever is to be told.
 *
 * @param today in its zone
 * @param outlook null without a forecast
 * @param arrivals what is on order and hasn't come, the first one first
 * @param hires hired items that are still here, by the date they are due back
 * @param alarms those that stand, of all roles
 * @param days shooting days that are planned or being shot, in the order of their dates
 */
record Facts(
        LocalDate today,
        ProofSummary proof,
        @Nullable StorageOutlook outlook,
        List<Arrival> arrivals,
        List<HireReturn> hires,
        Rechecks.Pressing rechecks,
        List<Alarm> alarms,
        List<ShootingDay> days) {

    /**
     * Something on order.
     *
     * @param left how many items have not come yet
     * @param what they are for
     * @param page that shows the order
     */
    record Arrival(int left, String what, LocalDate expectedOn, String page) {}
}

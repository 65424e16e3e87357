package rollbook.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.forecast.StorageShow.GB;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import rollbook.burndown.LeadTime;
import rollbook.burndown.WorkingCalendar;
import rollbook.ordering.Hire;
import rollbook.ordering.Offer;
import rollbook.ordering.SupplierDays;
import rollbook.production.Role;
import rollbook.supplier.Catalogue;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;

@PortalTest
class OffersTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    ForecastInputs inputs;

    @Autowired
    ForecastRuns runs;

    @Autowired
    Catalogue catalogue;

    private StorageShow show;

    @BeforeEach
    void makeShow() {
        show = new StorageShow(fixtures, jdbc);
    }

    @Test
    void supplyAndWorkingDaysAreTheProductions() {
        show.supply(show.keptLeg("Array"), 8000, 2, 3, 5, 18_050);
        jdbc.sql("insert into production_holiday (production_id, date, name) values (?, ?, 'Holiday')")
                .params(show.production.id, java.sql.Date.valueOf(show.date(2)))
                .update();

        Offer offer = inputs.gather(show.production.id).offers().get(0);
        assertThat(offer.itemCapacityBytes()).isEqualTo(8000 * GB);
        assertThat(offer.packSize()).isEqualTo(2);
        assertThat(offer.itemPriceMinorUnits()).isEqualTo(18_050);
        assertThat(offer.supplier().leadTime()).isEqualTo(LeadTime.usually(3, 5));
        WorkingCalendar calendar = offer.supplier().days().calendar();
        assertThat(calendar.weekend()).containsExactly(DayOfWeek.SATURDAY, DayOfWeek.SUNDAY);
        assertThat(calendar.holidays()).containsExactly(show.date(2));
        assertThat(offer.hire()).isNull();
    }

    @Test
    void aSupplierAbroadKeepsTheHolidaysOfItsCountryAndTheSetTakesADayMore() {
        UUID leg = show.keptLeg("Array");
        show.supply(leg, 8000, 2, 3, 5, 18_050);
        jdbc.sql("update forecast_supply set delivered_to = 'SET' where leg_id = ?")
                .param(leg)
                .update();
        jdbc.sql("update supplier_supplier set country = 'DE' where production_id = ?")
                .param(show.production.id)
                .update();

        SupplierDays days =
                inputs.gather(show.production.id).offers().get(0).supplier().days();
        // German Unity Day (Einigungsvertrag, article 2).
        assertThat(days.calendar().holidays()).contains(LocalDate.of(show.today.getYear(), 10, 3));
        assertThat(days.deliveryWorkingDays()).isOne();
    }

    @Test
    void onlyALegThatComesBackCanBeHired() {
        for (UUID leg : new UUID[] {show.keptLeg("Array"), show.leg("Shuttle", 5, 100)}) {
            show.price(show.supply(leg, 8000, 2, 3, 5, 18_050), 2, 18_050L, 900L);
        }

        assertThat(inputs.gather(show.production.id).offers())
                .extracting(Offer::hire)
                .containsExactly(null, new Hire(900, 2));
    }

    @Test
    void whatIsForHireOnlyIsNoOffer() {
        show.price(show.supply(show.leg("Shuttle", 5, 100), 8000, 2, 3, 5, 18_050), 2, null, 900L);

        assertThat(inputs.gather(show.production.id).offers()).isEmpty();
    }

    @Test
    void aNewPriceIsReckonedWithFromItsDateOnAndAsksForAForecast() {
        UUID item = show.supply(show.keptLeg("Array"), 8000, 2, 3, 5, 18_050);
        price(item, show.date(1), 20_000, 1);
        assertThat(inputs.gather(show.production.id).offers().get(0).itemPriceMinorUnits())
                .isEqualTo(18_050);
        assertThat(runs.asked(show.production.id).because()).containsExactly(Because.SUPPLY);

        price(item, show.date(0), 19_000, 2);
        ForecastInput input = inputs.gather(show.production.id);
        assertThat(input.offers().get(0).itemPriceMinorUnits()).isEqualTo(19_000);
        assertThat(input.sources().get(0).priceFrom()).isEqualTo(show.today);
    }

    private void price(UUID item, LocalDate from, long cents, int afterPrice) {
        catalogue.price(show.production.as(Role.OFFICE), item, new Catalogue.NewPrice(from, cents, null), afterPrice);
    }

    @Test
    void aForecastThatWasKeptBeforeThereWereCataloguesIsRead() {
        show.supply(show.keptLeg("Array"), 8000, 2, 3, 5, 18_050);
        ForecastInput input = inputs.gather(show.production.id);
        String kept = ForecastJson.write(input);
        String before = kept.replaceFirst("\"sources\":\\[[^\\]]*],", "");

        assertThat(before).isNotEqualTo(kept);
        assertThat(ForecastJson.read(kept, ForecastInput.class)).isEqualTo(input);
        assertThat(ForecastJson.read(before, ForecastInput.class).sources()).isEmpty();
    }

    @Test
    void aSupplierMayWorkOnOtherDaysThanTheProduction() {
        show.supply(show.keptLeg("Array"), 8000, 2, 3, 5, 18_050);
        jdbc.sql("update supplier_supplier set working_days = 'TUESDAY,FRIDAY' where production_id = ?")
                .param(show.production.id)
                .update();

        assertThat(inputs.gather(show.production.id)
                        .offers()
                        .get(0)
                        .supplier()
                        .days()
                        .calendar()
                        .weekend())
                .containsExactly(
                        DayOfWeek.MONDAY,
                        DayOfWeek.WEDNESDAY,
                        DayOfWeek.THURSDAY,
                        DayOfWeek.SATURDAY,
                        DayOfWeek.SUNDAY);
    }

    @Test
    void untilTheNextOrdersCloseEveryForecastOfADayIsAsOfTheSameMoment() {
        show.supply(show.keptLeg("Array"), 8000, 2, 3, 5, 18_050);
        List<Offer> offers = inputs.gather(show.production.id).offers();
        ZoneId zone = ZoneId.of("Europe/Lisbon");
        Instant four = show.today.atTime(16, 0).atZone(zone).toInstant();

        assertThat(Offers.asOf(four.minusSeconds(1), show.today, zone, offers))
                .isEqualTo(show.today.atStartOfDay(zone).toInstant());
        assertThat(Offers.asOf(four, show.today, zone, offers)).isEqualTo(four);
        assertThat(Offers.asOf(four.plusSeconds(9000), show.today, zone, offers))
                .isEqualTo(four);
    }
}

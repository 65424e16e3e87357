package rollbook.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static rollbook.forecast.Shoot.EVERY_DAY;
import static rollbook.forecast.Shoot.GB;
import static rollbook.forecast.Shoot.WEEKDAYS;
import static rollbook.forecast.Shoot.date;
import static rollbook.forecast.Shoot.forecast;
import static rollbook.forecast.Shoot.item;
import static rollbook.forecast.Shoot.leg;
import static rollbook.forecast.Shoot.only;
import static rollbook.forecast.Shoot.plan;
import static rollbook.forecast.Shoot.supply;

import java.math.BigDecimal;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rollbook.burndown.WorkingCalendar;
import rollbook.quantity.Share;

class OrderProposalTests {
    private static final LocalDate MONDAY = LocalDate.of(2026, 6, 1);

    // T13, the constant lead time: the last safe day is 4, the pool runs out on day 5; with a lead time of 1, 2, 3, 4,
    // 5
    // days order by the close of day 3, 2, 1, 0, or it is late already. Day 0 is today, the close of day 0.
    @ParameterizedTest
    @CsvSource({"1, 3, ORDER_BY", "2, 2, ORDER_BY", "3, 1, ORDER_BY", "4, 0, ORDER_BY", "5, -1, LATE"})
    void ordersTheLeadTimeBeforeTheLastSafeDay(int leadTime, int orderByDay, OrderFlag flag) {
        LegForecast leg = only(forecast(
                0,
                plan(1, 8, 5000),
                leg(null, Share.WHOLE, List.of(item(20_000, 0)), List.of(), supply(8000, 1, leadTime, 0))));

        assertThat(leg.runOutOn()).isEqualTo(date(5));
        assertThat(leg.order().orderBy()).isEqualTo(date(orderByDay));
        assertThat(leg.flag()).isEqualTo(flag);
    }

    // R17, reorder point with constant demand and lead time (Taha, neon lamps, as quoted in a public test): 100 a day
    // and
    // an effective lead time of 2 days make a reorder point of 200. With 200 left at the close of day 0 the order is
    // due
    // that day, with 300 a day later, with 199 it is late.
    @ParameterizedTest
    @CsvSource({"200, 0, ORDER_BY", "300, 1, ORDER_BY", "199, -1, LATE"})
    void theOrderIsDueWhenTheReorderPointIsReached(long leftGb, int orderByDay, OrderFlag flag) {
        LegForecast leg = only(forecast(
                0,
                plan(1, 10, 100),
                leg(null, Share.WHOLE, List.of(item(leftGb, 0)), List.of(), supply(1000, 1, 2, 0))));

        assertThat(leg.order().orderBy()).isEqualTo(date(orderByDay));
        assertThat(leg.flag()).isEqualTo(flag);
    }

    // Runs out on Monday 15 June: needed by Friday 12; two safety days: comes by Wednesday 10; five working days of
    // lead
    // time: Tue 9, Mon 8, Fri 5, Thu 4, Wed 3. With Friday 5 a holiday: Tue 9, Mon 8, Thu 4, Wed 3, Tue 2.
    @Test
    void countsLeadTimeAndSafetyInWorkingDays() {
        Supply supply = supply(8000, 1, 5, 2);
        WorkingCalendar withHoliday = new WorkingCalendar(WEEKDAYS.weekend(), Set.of(LocalDate.of(2026, 6, 5)));
        OrderProposal plain = proposal(GB, LocalDate.of(2026, 6, 15), supply, MONDAY, WEEKDAYS);
        OrderProposal holiday = proposal(GB, LocalDate.of(2026, 6, 15), supply, MONDAY, withHoliday);

        assertThat(plain.neededBy()).isEqualTo(LocalDate.of(2026, 6, 12));
        assertThat(plain.arrivesBy()).isEqualTo(LocalDate.of(2026, 6, 10));
        assertThat(plain.orderBy()).isEqualTo(LocalDate.of(2026, 6, 3));
        assertThat(holiday.orderBy()).isEqualTo(LocalDate.of(2026, 6, 2));
    }

    // Due on Friday 5 June; on Saturday nobody takes an order any more: late, and Monday 8 + 2 working days is the
    // 10th.
    @Test
    void isLateFromTheDayAfterTheOrderByDate() {
        OrderProposal order =
                proposal(GB, LocalDate.of(2026, 6, 10), supply(8000, 1, 2, 0), LocalDate.of(2026, 6, 6), WEEKDAYS);

        assertThat(order.orderBy()).isEqualTo(LocalDate.of(2026, 6, 5));
        assertThat(order.flagOn(LocalDate.of(2026, 6, 5))).isEqualTo(OrderFlag.ORDER_BY);
        assertThat(order.flagOn(LocalDate.of(2026, 6, 6))).isEqualTo(OrderFlag.LATE);
        assertThat(order.earliestArrival()).isEqualTo(LocalDate.of(2026, 6, 10));
    }

    // 20,000 GB lacking, items of 8,000 GB filled to 95 % hold 7,600 GB: 2.63, so 3 items; in packs of 2 that is 2
    // packs,
    // 4 items, 30,400 GB, at 180.50 each 722.00.
    @Test
    void ordersWholePacksAndSaysWhatTheyCost() {
        OrderProposal order =
                OrderProposal.of(20_000 * GB, date(9), supply(8000, 2, 1, 0), MONDAY, Share.percent(95), EVERY_DAY);

        assertThat(order.packs()).isEqualTo(2);
        assertThat(order.items()).isEqualTo(4);
        assertThat(order.capacityBytes()).isEqualTo(30_400 * GB);
        assertThat(order.cost()).isEqualTo(new BigDecimal("722.00"));
        assertThat(order.currency().getCurrencyCode()).isEqualTo("EUR");
    }

    // 15,200 GB are exactly two items of 7,600 GB; one byte more takes a third.
    @Test
    void aByteMoreTakesAnotherItem() {
        Supply supply = supply(8000, 1, 1, 0);

        assertThat(OrderProposal.of(15_200 * GB, date(9), supply, MONDAY, Share.percent(95), EVERY_DAY)
                        .items())
                .isEqualTo(2);
        assertThat(OrderProposal.of(15_200 * GB + 1, date(9), supply, MONDAY, Share.percent(95), EVERY_DAY)
                        .items())
                .isEqualTo(3);
    }

    @Test
    void aCalendarWithoutWorkingDaysIsRefused() {
        assertThatThrownBy(() -> new WorkingCalendar(Set.of(DayOfWeek.values()), Set.of()))
                .isInstanceOf(IllegalArgumentException.class);
    }

    private static OrderProposal proposal(
            long shortfall, LocalDate runOutOn, Supply supply, LocalDate today, WorkingCalendar calendar) {
        return OrderProposal.of(shortfall, runOutOn, supply, today, Share.WHOLE, calendar);
    }
}

package rollbook.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigInteger;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.UnaryOperator;
import java.util.stream.LongStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rollbook.burndown.WorkingCalendar;
import rollbook.quantity.Share;

/** What must hold for any show; shows are drawn from seeds. */
class ForecastPropertiesTests {
    @Test
    void theDrawnShowsReachEveryFlagAndEveryCause() {
        List<LegForecast> legs = LongStream.rangeClosed(RandomShow.FIRST_SEED, RandomShow.LAST_SEED)
                .mapToObj(seed -> SimpleRatioForecast.of(RandomShow.of(seed)))
                .flatMap(forecast -> forecast.legs().stream())
                .toList();

        assertThat(legs).extracting(LegForecast::flag).contains(OrderFlag.values());
        assertThat(legs.stream()
                        .filter(leg -> leg.runOut() != null)
                        .map(leg -> leg.runOut().cause()))
                .contains(RunOut.Cause.values());
        assertThat(legs).anyMatch(leg -> leg.returningBytes() > 0 && leg.leavingBytes() > 0 && leg.arrivingBytes() > 0);
    }

    @Test
    void bytesAreConserved() {
        for (long seed = RandomShow.FIRST_SEED; seed <= RandomShow.LAST_SEED; seed++) {
            ForecastInput input = RandomShow.of(seed);
            for (LegForecast leg : SimpleRatioForecast.of(input).legs()) {
                assertThat(leg.roomAtEndBytes())
                        .as("seed %d", seed)
                        .isEqualTo(leg.roomNowBytes()
                                + leg.arrivingBytes()
                                + leg.returningBytes()
                                - leg.leavingBytes()
                                - leg.demandBytes());
                long left = leg.roomNowBytes();
                for (BurnDown.Point point : leg.burnDown().points()) {
                    if (!point.date().isBefore(input.today())) {
                        left += point.returnedBytes()
                                - point.leavingBytes()
                                - point.expectedBytes()
                                + point.arrivedBytes();
                        assertThat(point.leftBytes())
                                .as("seed %d, %s", seed, point.date())
                                .isEqualTo(left);
                    }
                }
                assertThat(left).as("seed %d", seed).isEqualTo(leg.roomAtEndBytes());
            }
        }
    }

    /** The demand by another way than the walk: straight from the days, in BigInteger. */
    @Test
    void theDemandIsThatOfTheDaysToCome() {
        for (long seed = RandomShow.FIRST_SEED; seed <= RandomShow.LAST_SEED; seed++) {
            ForecastInput input = RandomShow.of(seed);
            StorageForecast forecast = SimpleRatioForecast.of(input);
            for (int i = 0; i < input.legs().size(); i++) {
                ForecastLeg leg = input.legs().get(i);
                BigInteger sum = BigInteger.valueOf(leg.waitingBytes());
                for (ForecastDay day : input.days()) {
                    sum = sum.add(demand(day, forecast.ratio(), leg.kept()));
                }
                assertThat(BigInteger.valueOf(forecast.legs().get(i).demandBytes()))
                        .as("seed %d", seed)
                        .isEqualTo(sum);
            }
        }
    }

    @Test
    void theRunOutIsWhereTheSeriesFirstGoesBelowZeroBeforeArrivals() {
        for (long seed = RandomShow.FIRST_SEED; seed <= RandomShow.LAST_SEED; seed++) {
            ForecastInput input = RandomShow.of(seed);
            for (LegForecast leg : SimpleRatioForecast.of(input).legs()) {
                LocalDate first = leg.burnDown().points().stream()
                        .filter(point -> !point.date().isBefore(input.today()))
                        .filter(point -> point.leftBytes() - point.arrivedBytes() < 0)
                        .map(BurnDown.Point::date)
                        .findFirst()
                        .orElse(null);
                assertThat(leg.runOutOn()).as("seed %d", seed).isEqualTo(first);
            }
        }
    }

    @Test
    void moreCapacityNeverBringsTheRunOutForward() {
        for (long seed = RandomShow.FIRST_SEED; seed <= RandomShow.LAST_SEED; seed++) {
            ForecastInput input = RandomShow.of(seed);
            SplittableRandom random = new SplittableRandom(seed);
            ForecastInput richer = withLegs(input, leg -> {
                List<ForecastLeg.Item> items = new ArrayList<>(leg.items());
                items.replaceAll(item -> larger(item, random.nextLong(2000) * Shoot.GB));
                items.add(Shoot.item(random.nextLong(1, 3000), 0));
                return with(leg, items, leg.arrivals(), leg.supply());
            });

            assertThat(runOuts(richer))
                    .as("seed %d", seed)
                    .zipSatisfy(runOuts(input), (rich, poor) -> assertThat(rich).isAfterOrEqualTo(poor));
        }
    }

    @Test
    void aLongerLeadTimeNeverMakesTheOrderByDateLater() {
        for (long seed = RandomShow.FIRST_SEED; seed <= RandomShow.LAST_SEED; seed++) {
            ForecastInput input = RandomShow.of(seed);
            ForecastInput slower = withLegs(
                    input,
                    leg -> with(leg, leg.items(), leg.arrivals(), leg.supply() == null ? null : slower(leg.supply())));
            List<LegForecast> before = SimpleRatioForecast.of(input).legs();
            List<LegForecast> after = SimpleRatioForecast.of(slower).legs();
            for (int i = 0; i < before.size(); i++) {
                OrderProposal order = before.get(i).order();
                if (order != null) {
                    assertThat(after.get(i).order().orderBy())
                            .as("seed %d", seed)
                            .isBefore(order.orderBy());
                }
            }
        }
    }

    @Test
    void theProposedOrderRemovesTheShortfallAndAPackLessDoesNot() {
        for (long seed = RandomShow.FIRST_SEED; seed <= RandomShow.LAST_SEED; seed++) {
            ForecastInput input = RandomShow.of(seed);
            List<LegForecast> legs = SimpleRatioForecast.of(input).legs();
            for (int i = 0; i < legs.size(); i++) {
                OrderProposal order = legs.get(i).order();
                if (legs.get(i).flag() == OrderFlag.ORDER_BY) {
                    LegForecast enough = ordered(input, i, order, order.items());
                    assertThat(enough.lastsToTheEnd()).as("seed %d", seed).isTrue();
                    assertThat(enough.shortfallBytes()).as("seed %d", seed).isZero();
                    LegForecast less = ordered(
                            input, i, order, order.items() - order.supply().packSize());
                    assertThat(less.shortfallBytes()).as("seed %d", seed).isPositive();
                }
            }
        }
    }

    @Test
    void anOrderSentByItsDateIsThereOnTheDayItIsNeededAndOneSentLaterMissesTheSafetyDays() {
        for (long seed = RandomShow.FIRST_SEED; seed <= RandomShow.LAST_SEED; seed++) {
            ForecastInput input = RandomShow.of(seed);
            WorkingCalendar calendar = input.calendar();
            for (LegForecast leg : SimpleRatioForecast.of(input).legs()) {
                OrderProposal order = leg.order();
                if (order != null) {
                    int days = order.supply().leadTimeWorkingDays()
                            + order.supply().safetyWorkingDays();
                    assertThat(calendar.isWorkingDay(order.orderBy()))
                            .as("seed %d", seed)
                            .isTrue();
                    assertThat(calendar.plus(order.orderBy(), days))
                            .as("seed %d", seed)
                            .isBefore(leg.runOutOn());
                    assertThat(calendar.plus(order.orderBy(), days + 1))
                            .as("seed %d", seed)
                            .isAfterOrEqualTo(leg.runOutOn());
                }
            }
        }
    }

    private static BigInteger demand(ForecastDay day, PlanRatio ratio, Share kept) {
        if (day.state() == ForecastDay.State.WRAPPED || day.state() == ForecastDay.State.CANCELLED) {
            return BigInteger.ZERO;
        }
        BigInteger expected = BigInteger.valueOf(day.plannedBytes());
        if (ratio.wrappedDays() > 0) {
            expected = roundedUp(expected.multiply(ratio.actualBytes()), ratio.plannedBytes());
        }
        BigInteger rest =
                expected.subtract(BigInteger.valueOf(day.actualBytes())).max(BigInteger.ZERO);
        return roundedUp(rest.multiply(BigInteger.valueOf(kept.numerator())), BigInteger.valueOf(kept.denominator()));
    }

    private static BigInteger roundedUp(BigInteger dividend, BigInteger divisor) {
        BigInteger[] parts = dividend.divideAndRemainder(divisor);
        return parts[1].signum() == 0 ? parts[0] : parts[0].add(BigInteger.ONE);
    }

    private static List<LocalDate> runOuts(ForecastInput input) {
        return SimpleRatioForecast.of(input).legs().stream()
                .map(leg -> leg.lastsToTheEnd() ? LocalDate.MAX : leg.runOutOn())
                .toList();
    }

    private static LegForecast ordered(ForecastInput input, int index, OrderProposal order, long items) {
        ForecastLeg leg = input.legs().get(index);
        List<ForecastLeg.Arrival> arrivals = new ArrayList<>(leg.arrivals());
        arrivals.add(new ForecastLeg.Arrival(
                input.calendar().plus(order.orderBy(), order.supply().leadTimeWorkingDays()),
                items,
                order.supply().itemCapacityBytes()));
        List<ForecastLeg> legs = new ArrayList<>(input.legs());
        legs.set(index, with(leg, leg.items(), arrivals, leg.supply()));
        return SimpleRatioForecast.of(
                        new ForecastInput(input.today(), input.days(), legs, input.fillLevel(), input.calendar()))
                .legs()
                .get(index);
    }

    private static ForecastInput withLegs(ForecastInput input, UnaryOperator<ForecastLeg> change) {
        return new ForecastInput(
                input.today(),
                input.days(),
                input.legs().stream().map(change).toList(),
                input.fillLevel(),
                input.calendar());
    }

    private static ForecastLeg with(
            ForecastLeg leg,
            List<ForecastLeg.Item> items,
            List<ForecastLeg.Arrival> arrivals,
            @Nullable Supply supply) {
        return new ForecastLeg(
                leg.id(),
                leg.name(),
                leg.returnAfterDays(),
                leg.kept(),
                leg.reduction(),
                items,
                arrivals,
                leg.releases(),
                leg.waitingBytes(),
                supply);
    }

    private static ForecastLeg.Item larger(ForecastLeg.Item item, long bytes) {
        return new ForecastLeg.Item(
                item.code(),
                item.capacityBytes() + bytes,
                item.usedBytes(),
                item.usable(),
                item.backOn(),
                item.dueBackOn());
    }

    private static Supply slower(Supply supply) {
        return new Supply(
                supply.itemCapacityBytes(),
                supply.packSize(),
                supply.leadTimeWorkingDays() + 1,
                supply.safetyWorkingDays(),
                supply.itemPriceMinorUnits(),
                supply.currency());
    }
}

package rollbook.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class CheckValueTests {
    private static final long PLANNED_BYTES = 5_000_000_000_000_000L;

    @ParameterizedTest(name = "{argumentSetName}")
    @MethodSource("checkValues")
    void codeReproducesTheFigure(CheckValue value) {
        double[] results = results(value);

        assertThat(results).hasSameSizeAs(value.expected());
        for (int i = 0; i < results.length; i++) {
            assertThat(results[i])
                    .as("figure %d", i + 1)
                    .isCloseTo(value.expected()[i], within(value.tolerance(value.expected()[i])));
        }
    }

    @Test
    void everyLineSaysWhereItsFiguresAreFrom() {
        assertThat(CheckValue.all()).hasSizeGreaterThanOrEqualTo(49).allSatisfy(value -> {
            assertThat(value.source()).isNotBlank();
            assertThat(value.status()).isNotBlank();
        });
    }

    static Stream<Arguments> checkValues() {
        return CheckValue.all().stream().map(value -> Arguments.argumentSet(value.displayName(), value));
    }

    private static double[] results(CheckValue in) {
        return switch (in.kind()) {
            case "belief" -> belief(in, belief(in).b());
            case "belief-mean-square" -> belief(in, belief(in).b() / belief(in).a());
            case "scale" -> one(belief(in).ofMean(in.count("days")).scale());
            case "quantiles" -> each(in, belief(in).ofMean(in.count("days"))::quantile);
            case "log-quantiles" ->
                each(in, chance -> Math.log(belief(in).predictive().quantile(chance)));
            case "level-logs" -> each(in, chance -> Math.log(belief(in).level().quantile(chance)));
            case "chance-above" -> each(in, belief(in).predictive()::chanceAbove);
            case "chance-above-log" -> each(in, log -> belief(in).predictive().chanceAbove(Math.exp(log)));
            case "correlation" -> one(belief(in).correlationOfTwoDays());
            case "product-quantiles" -> productOfParts(in.numbers("at"));
            case "zero-days" -> each(in, zeroDays(in)::quantile);
            case "zero-days-mean" -> one(zeroDays(in).mean());
            case "zero-days-none" -> one(zeroDays(in).chanceOfNone(in.count("next")));
            case "pinball" -> one(meanPinball(in));
            case "interval" ->
                one(Scores.interval(in.number("outside"), in.number("actual"), in.number("low"), in.number("high")));
            case "interpolated" -> Quantiles.interpolated(in.numbers("sample"), in.numbers("at"));
            case "counted" -> each(in, chance -> Quantiles.counted(wholeNumbers(in.numbers("sample")), chance));
            case "coverage" ->
                new double[] {
                    Coverage.fewest(in.count("of"), in.number("chance"), in.number("surprise")),
                    Coverage.most(in.count("of"), in.number("chance"), in.number("surprise"))
                };
            default -> throw new IllegalArgumentException(in.kind());
        };
    }

    private static Belief belief(CheckValue in) {
        double[] prior = in.numbers("prior");
        Belief belief = new Belief(prior[0], prior[1], prior[2], prior[3]);
        if (in.has("size")) {
            return belief.updated(sample(in.number("mean"), in.number("deviation"), in.count("size")));
        }
        if (in.has("log")) {
            return belief.updated(in.numbers("log"));
        }
        double halfLife = in.has("halfLife") ? in.number("halfLife") : Double.POSITIVE_INFINITY;
        List<ShotDay> days = new ArrayList<>(days("main", in.numbers("main")));
        days.addAll(days("second", in.numbers("second")));
        return Learning.from(days, new Habits(belief, halfLife, false))
                .unit(in.inputs().getOrDefault("unit", "main"))
                .belief();
    }

    private static List<ShotDay> days(String unit, double[] ratios) {
        List<ShotDay> days = new ArrayList<>();
        for (double ratio : ratios) {
            int number = days.size() + 1;
            LocalDate date = LocalDate.of(2026, 6, number);
            days.add(new ShotDay(unit, number, date, PLANNED_BYTES, Math.round(PLANNED_BYTES * ratio), null));
        }
        return days;
    }

    /** Half of the values as far below the mean as the others above; the deviation is that of a sample. */
    private static double[] sample(double mean, double deviation, int size) {
        double away = deviation * Math.sqrt((size - 1.0) / size);
        double[] sample = new double[size];
        for (int i = 0; i < size; i++) {
            sample[i] = mean + (i % 2 == 0 ? away : -away);
        }
        return sample;
    }

    private static double[] belief(CheckValue in, double last) {
        return new double[] {belief(in).k(), belief(in).mu(), belief(in).a(), last};
    }

    /** Of minutes × bytes per minute of one day before any: all pairs of a thousand equally likely values each. */
    private static double[] productOfParts(double[] chances) {
        LearnedUnit.Apart parts = Learning.partsOf(Habits.USUAL.prior());
        int steps = 1000;
        double[] products = new double[steps * steps];
        for (int i = 0; i < steps; i++) {
            double minutes = parts.minutes().predictive().quantile((i + 0.5) / steps);
            for (int j = 0; j < steps; j++) {
                products[i * steps + j] = minutes;
            }
        }
        for (int j = 0; j < steps; j++) {
            double perMinute = parts.bytesPerMinute().predictive().quantile((j + 0.5) / steps);
            for (int i = 0; i < steps; i++) {
                products[i * steps + j] *= perMinute;
            }
        }
        return Quantiles.interpolated(products, chances);
    }

    private static ZeroDays zeroDays(CheckValue in) {
        return ZeroDays.PRIOR.plus(in.count("zero"), in.count("days") - in.count("zero"));
    }

    private static double meanPinball(CheckValue in) {
        double[] actual = in.numbers("actual");
        double[] forecast = in.numbers("forecast");
        double sum = 0;
        for (int i = 0; i < actual.length; i++) {
            sum += Scores.pinball(in.number("chance"), actual[i], forecast[i]);
        }
        return sum / actual.length;
    }

    private static int[] wholeNumbers(double[] numbers) {
        return Arrays.stream(numbers).mapToInt(number -> (int) number).toArray();
    }

    private static double[] each(CheckValue in, DoubleUnaryOperator computation) {
        return Arrays.stream(in.numbers("at")).map(computation).toArray();
    }

    private static double[] one(double figure) {
        return new double[] {figure};
    }
}

package rollbook.ordering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import rollbook.testing.CheckValueFile;

class TextbookTests {
    @ParameterizedTest(name = "{argumentSetName}")
    @MethodSource("lines")
    void theFormulaGivesThePublishedFigure(CSVRecord line) {
        Map<String, Double> inputs = new TreeMap<>();
        for (String input : line.get("inputs").split(" ")) {
            String[] parts = input.split("=");
            inputs.put(parts[0], Double.valueOf(parts[1]));
        }
        assertThat(results(line.get("formula"), new Inputs(inputs)).get(line.get("result")))
                .isEqualTo(Double.parseDouble(line.get("expected")), within(Double.parseDouble(line.get("within"))));
    }

    @Test
    void everyLineNamesItsSource() {
        assertThat(records())
                .hasSizeGreaterThan(70)
                .allSatisfy(line -> assertThat(line.get("source")).isNotBlank());
    }

    private record Inputs(Map<String, Double> values) {
        double get(String name) {
            return Objects.requireNonNull(values.get(name), name);
        }

        double get(String name, double otherwise) {
            return values.getOrDefault(name, otherwise);
        }

        double z() {
            return values.containsKey("z") ? get("z") : Textbook.z(get("level"));
        }
    }

    private static Map<String, Double> results(String formula, Inputs of) {
        return switch (formula) {
            case "reorder-point" -> {
                double deviation = Textbook.leadTimeDeviation(
                        of.get("mean"), of.get("deviation"), of.get("lead"), of.get("leadDeviation"));
                double safety = of.z() * deviation;
                yield Map.of(
                        "z",
                        of.z(),
                        "deviation",
                        deviation,
                        "safety",
                        safety,
                        "stock",
                        of.get("mean") * of.get("lead") + safety);
            }
            case "cycle-service" -> {
                double z = (of.get("stock") - of.get("mean")) / of.get("deviation");
                yield Map.of("z", z, "chance", Textbook.chance(z));
            }
            case "unit-normal-loss" -> Map.of("loss", Textbook.unitNormalLoss(of.get("z")));
            case "order-quantity" -> {
                double quantity = Textbook.orderQuantity(of.get("fixed"), of.get("holding"), of.get("demand"));
                yield Map.of(
                        "quantity",
                        quantity,
                        "cycle",
                        quantity / of.get("demand"),
                        "cost",
                        Math.sqrt(2 * of.get("fixed") * of.get("holding") * of.get("demand")));
            }
            case "planned-shortages" -> {
                double plain = Textbook.orderQuantity(of.get("fixed"), of.get("holding"), of.get("demand"));
                double both = of.get("shortage") + of.get("holding");
                double stock = plain * Math.sqrt(of.get("shortage") / both);
                double quantity = plain * Math.sqrt(both / of.get("shortage"));
                yield Map.of(
                        "stock",
                        stock,
                        "quantity",
                        quantity,
                        "cycle",
                        quantity / of.get("demand"),
                        "short",
                        quantity - stock);
            }
            case "newsvendor" -> {
                double ratio = of.get("under") / (of.get("under") + of.get("over"));
                double best = of.get("mean") + Textbook.z(ratio) * of.get("deviation");
                yield Map.of(
                        "ratio", ratio,
                        "quantity", best,
                        "cost",
                                Textbook.newsvendorCost(
                                        of.get("under"),
                                        of.get("over"),
                                        of.get("mean"),
                                        of.get("deviation"),
                                        of.get("quantity", best)));
            }
            case "newsvendor-exponential" -> {
                double ratio = of.get("under") / (of.get("under") + of.get("over"));
                double best = -of.get("mean") * Math.log(1 - ratio);
                yield Map.of("ratio", ratio, "quantity", best, "order", best - of.get("onHand", 0));
            }
            case "one-order" -> {
                double z = (of.get("quantity") - of.get("mean")) / of.get("deviation");
                double lost = of.get("deviation") * Textbook.unitNormalLoss(z);
                double sold = of.get("mean") - lost;
                yield Map.of(
                        "lost",
                        lost,
                        "sold",
                        sold,
                        "left",
                        of.get("quantity") - sold,
                        "filled",
                        sold / of.get("mean"),
                        "inStock",
                        Textbook.chance(z));
            }
            case "fill-rate" -> {
                double z = Textbook.zOfLoss((1 - of.get("rate")) * of.get("quantity") / of.get("deviation"));
                yield Map.of("z", z, "stock", of.get("mean") + z * of.get("deviation"));
            }
            default -> throw new IllegalArgumentException(formula);
        };
    }

    static Stream<Arguments> lines() {
        return records()
                .map(line -> Arguments.argumentSet(
                        "%s %s, %s [%s]"
                                .formatted(
                                        line.get("formula"),
                                        line.get("inputs"),
                                        line.get("result"),
                                        line.get("source")),
                        line));
    }

    private static Stream<CSVRecord> records() {
        return CheckValueFile.lines(TextbookTests.class, "check-values.csv").stream();
    }
}

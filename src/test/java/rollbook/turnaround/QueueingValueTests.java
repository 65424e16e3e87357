package rollbook.turnaround;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import rollbook.testing.CheckValueFile;

/** The closed forms that the simulation is held against are right themselves. */
class QueueingValueTests {
    /** Numbers up to which an open queue’s chain is followed; beyond it is a chance below 10⁻³⁰. */
    private static final int MOST = 500;

    @ParameterizedTest(name = "{argumentSetName}")
    @MethodSource("lines")
    void theClosedFormGivesTheFigure(CSVRecord line) {
        double[] expected = numbers(line.get("expected"));
        double tolerance = Double.parseDouble(line.get("within").substring(1));

        double[] results = results(line.get("formula"), line.get("result"), inputs(line), expected.length);

        assertThat(results).hasSameSizeAs(expected);
        for (int i = 0; i < results.length; i++) {
            assertThat(results[i]).as("figure %d", i + 1).isCloseTo(expected[i], within(tolerance));
        }
    }

    @Test
    void everyLineSaysWhereItsFiguresAreFrom() {
        assertThat(records()).hasSizeGreaterThan(170).allSatisfy(line -> {
            assertThat(line.get("source")).isNotBlank();
            assertThat(line.get("status")).isIn("read", "read in a quotation", "computed");
        });
    }

    private static double[] results(String formula, String result, Inputs of, int count) {
        return switch (formula) {
            case "open" -> each(count, i -> open(result, of.openQueue(i)));
            case "one-server" -> each(count, i -> oneServer(result, of.openQueue(i), of.at("deviation", i)));
            case "cards" -> each(count, i -> cards(result, of.cardQueue(i)));
            case "network" -> network(result, of, Network::exact);
            case "network-approximately" -> network(result, of, Network::approximate);
            default -> throw new IllegalArgumentException(formula);
        };
    }

    private static double open(String result, OpenQueue queue) {
        double waiting = queue.waiting();
        return switch (result) {
            case "nobody" -> queue.chanceOfNobody();
            case "chanceToWait" -> queue.chanceToWait();
            case "varianceThere" -> queue.chain(MOST).varianceRate(n -> n, n -> 0);
            default -> oneOfLittles(result, queue, waiting);
        };
    }

    private static double oneServer(String result, OpenQueue queue, double deviation) {
        return oneOfLittles(result, queue, queue.waitingWithDeviation(deviation));
    }

    private static double oneOfLittles(String result, OpenQueue queue, double waiting) {
        return switch (result) {
            case "waiting" -> waiting;
            case "wait" -> waiting / queue.arrivals();
            case "there" -> waiting + queue.arrivals() / queue.services();
            case "stay" -> waiting / queue.arrivals() + 1 / queue.services();
            default -> throw new IllegalArgumentException(result);
        };
    }

    private static double cards(String result, CardQueue queue) {
        return switch (result) {
            case "nobody" -> queue.chain().chance(0);
            case "throughput" -> queue.throughput();
            case "atReaders" -> queue.atReaders();
            case "inCameras" -> queue.throughput() * queue.fill();
            case "waiting" -> queue.waiting();
            case "wait" -> queue.waitOfACard();
            case "turnaround" -> queue.turnaround();
            case "idleCameras" -> queue.idleCameras();
            case "starved" -> queue.chanceThatACameraIsIdle();
            case "timeAllReadersAreBusy" -> queue.timeAllReadersAreBusy();
            case "cardsThatWait" -> queue.cardsThatWait();
            case "efficiency" -> 1 - queue.waiting() / queue.cards();
            case "varianceOfOffloads" -> queue.chain().varianceRate(n -> 0, n -> 1);
            case "varianceAtReaders" -> queue.chain().varianceRate(n -> n, n -> 0);
            case "varianceOfIdle" -> queue.chain().varianceRate(queue::idleCameras, n -> 0);
            default -> throw new IllegalArgumentException(result);
        };
    }

    private static double[] network(String result, Inputs of, Solution solution) {
        double[] visits = of.all("visits");
        List<Network.Stop> stops = IntStream.range(0, visits.length)
                .mapToObj(k -> new Network.Stop(visits[k], of.at("service", k), servers((int) of.at("servers", k))))
                .toList();
        Network.Means means = solution.of(new Network(of.at("delay", 0), stops), (int) of.at("customers", 0));
        return switch (result) {
            case "throughput" -> new double[] {means.throughput()};
            case "residence" -> means.residence();
            case "there" -> means.customers();
            case "round" -> new double[] {of.at("customers", 0) / means.throughput() - of.at("delay", 0)};
            case "utilisation" -> each(visits.length, k -> means.throughput() * visits[k] * of.at("service", k));
            default -> throw new IllegalArgumentException(result);
        };
    }

    private static int servers(int written) {
        return written == 0 ? Network.DELAY : written;
    }

    private interface Solution {
        Network.Means of(Network network, int customers);
    }

    private record Inputs(Map<String, double[]> values) {
        double[] all(String name) {
            return Objects.requireNonNull(values.get(name), name);
        }

        double at(String name, int index) {
            double[] all = all(name);
            return all.length == 1 ? all[0] : all[index];
        }

        OpenQueue openQueue(int i) {
            int servers = values.containsKey("servers") ? (int) at("servers", i) : 1;
            return new OpenQueue(at("arrivals", i), at("services", i), servers);
        }

        CardQueue cardQueue(int i) {
            return new CardQueue(
                    (int) at("cards", i),
                    (int) at("cameras", i),
                    (int) at("readers", i),
                    at("fill", i),
                    at("service", i));
        }
    }

    private static Inputs inputs(CSVRecord line) {
        Map<String, double[]> values = new LinkedHashMap<>();
        for (String input : line.get("inputs").split(" ")) {
            String[] parts = input.split("=");
            values.put(parts[0], numbers(parts[1]));
        }
        return new Inputs(values);
    }

    private static double[] numbers(String text) {
        return Arrays.stream(text.split(";")).mapToDouble(Double::parseDouble).toArray();
    }

    private static double[] each(int count, Function<Integer, Double> figure) {
        return IntStream.range(0, count).mapToDouble(figure::apply).toArray();
    }

    static Stream<Arguments> lines() {
        return records()
                .map(line -> Arguments.argumentSet(
                        "%s: %s [%s; %s]"
                                .formatted(
                                        line.get("quantity"),
                                        line.get("result"),
                                        line.get("source"),
                                        line.get("status")),
                        line));
    }

    private static Stream<CSVRecord> records() {
        return CheckValueFile.lines(QueueingValueTests.class, "queueing-values.csv").stream();
    }
}

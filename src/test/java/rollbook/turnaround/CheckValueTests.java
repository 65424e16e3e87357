package rollbook.turnaround;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import rollbook.quantity.DataRate;
import rollbook.quantity.Fraction;
import rollbook.testing.CheckValueFile;

class CheckValueTests {
    private static final Fraction MEGABYTE = Fraction.of(1_000_000);

    @ParameterizedTest(name = "{argumentSetName}")
    @MethodSource("lines")
    void aCardTakesAsLongAsTheFigureSays(CSVRecord line) {
        TestDay day = TestDay.ofOneCard();
        day.cardBytes = Long.parseLong(line.get("gigabytes")) * TestDay.GB;
        day.recorded = TestDay.megabytes(100);
        day.wrapMillis = day.cardBytes / 100_000;
        day.readers = List.of(new Reader("READER", List.of(new Way("CARD", null, rate(line.get("reader"))))));
        day.destinations =
                destinations(line.get("write").split(";"), line.get("read").split(";"));
        day.writing = order(line.get("writing"));
        if (!line.get("reading back").equals("never")) {
            day.readBack = new ReadBack(ReadBack.When.HOLDING_READER, order(line.get("reading back")));
        }

        assertThat(day.played().overtimeMillis() / 1000.0)
                .isCloseTo(Double.parseDouble(line.get("seconds")), within(Double.parseDouble(line.get("within"))));
    }

    @Test
    void everyLineSaysWhereItsFigureIsFrom() {
        assertThat(CheckValueFile.lines(CheckValueTests.class, "check-values.csv"))
                .hasSizeGreaterThanOrEqualTo(7)
                .allSatisfy(line -> {
                    assertThat(line.get("source")).isNotBlank();
                    assertThat(line.get("status")).isNotBlank();
                });
    }

    static Stream<Arguments> lines() {
        return CheckValueFile.lines(CheckValueTests.class, "check-values.csv").stream()
                .map(line -> Arguments.argumentSet(
                        line.get("quantity") + " [" + line.get("source") + "; " + line.get("status") + "]", line));
    }

    private static List<Destination> destinations(String[] writes, String[] reads) {
        List<Destination> destinations = new ArrayList<>();
        for (int i = 0; i < writes.length; i++) {
            destinations.add(Destination.asRecorded("DRIVE " + i, rate(writes[i]), rate(reads[i])));
        }
        return destinations;
    }

    private static DataRate rate(String megabytesPerSecond) {
        return new DataRate(Fraction.of(new BigDecimal(megabytesPerSecond)).times(MEGABYTE));
    }

    private static Order order(String text) {
        return Arrays.stream(Order.values())
                .filter(order -> order.name()
                        .toLowerCase(java.util.Locale.ROOT)
                        .replace('_', ' ')
                        .equals(text))
                .findFirst()
                .orElseThrow();
    }
}

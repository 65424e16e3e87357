package rollbook.purchase;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class SerialLinesTests {
    private final SerialLines serials = new SerialLines(Map.of("SN-KNOWN", "DRIVE-001"));

    @Test
    void aLineIsASerialNumberHoweverLinesEndAndEmptyOnesOnlyCount() {
        assertThat(SerialLines.split("\r\n A-1 \r\n\n  \nB 2\rC-3\n"))
                .containsExactly(
                        new SerialLines.Line(2, "A-1"), new SerialLines.Line(5, "B 2"), new SerialLines.Line(6, "C-3"));
        assertThat(SerialLines.split("")).isEmpty();
    }

    @Test
    void eachWrongLineIsToldWithItsNumber() {
        assertThat(check("a-1\nsn-known\nA-1\n" + "x".repeat(65) + "\ntab\there\n" + "y".repeat(64)))
                .containsExactly(
                        new SerialLines.Wrong("purchase.problem.serial-known", List.of(2, "sn-known", "DRIVE-001")),
                        new SerialLines.Wrong("purchase.problem.serial-twice", List.of(3, "A-1", 1)),
                        new SerialLines.Wrong("purchase.problem.serial-long", List.of(4, 64)),
                        new SerialLines.Wrong("purchase.problem.serial-unprintable", List.of(5)));
    }

    @Test
    void aNumberOfAnEarlierListOfTheFormIsTold() {
        assertThat(check("a-1\na-2")).isEmpty();
        assertThat(check("b-1\nA-2"))
                .containsExactly(new SerialLines.Wrong("purchase.problem.serial-above", List.of(2, "A-2")));
    }

    private List<SerialLines.Wrong> check(String typed) {
        return serials.check(SerialLines.split(typed));
    }
}

package rollbook.shipment;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.shipment.RollsAbout.id;
import static rollbook.shipment.RollsAbout.roll;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rollbook.shipment.LossLine.Left;
import rollbook.verification.RollCopies.Card;

/** Each case worked by hand. */
class LossLineTests {

    @Test
    void whatIsLeftOfEachRollIsToldTheWorstFirst() {
        List<LossLine> lines = LossLine.of(
                Set.of(id("SHUTTLE")),
                List.of(
                        roll("A001", Card.ERASED)
                                .proven("SHUTTLE")
                                .proven("ARRAY")
                                .proven("TAPE")
                                .there(),
                        roll("A002", Card.ERASED)
                                .proven("SHUTTLE")
                                .proven("ARRAY")
                                .there(),
                        roll("A003", Card.HOLDS_ROLL).proven("SHUTTLE").there(),
                        roll("A004", Card.ERASED)
                                .proven("SHUTTLE")
                                .unproven("ARRAY")
                                .there(),
                        roll("A005", Card.ERASED).proven("SHUTTLE").there()));
        assertThat(lines).extracting(LossLine::rollCode).containsExactly("A005", "A004", "A003", "A002", "A001");
        assertThat(lines)
                .extracting(LossLine::left)
                .containsExactly(Left.NOTHING, Left.UNPROVEN_COPIES, Left.CARD, Left.ONE_COPY, Left.SEVERAL_COPIES);
    }

    @Test
    void aCopyInQuarantineIsLeftButProvesNothing() {
        LossLine line = only(roll("A001", Card.ERASED).proven("SHUTTLE").quarantined("ARRAY"), "SHUTTLE");
        assertThat(line.left()).isEqualTo(Left.UNPROVEN_COPIES);
        assertThat(line.isBare()).isTrue();
    }

    @Test
    void whatWasLostEarlierIsNotLeft() {
        assertThat(only(roll("A001", Card.ERASED).proven("SHUTTLE").lost("ARRAY"), "SHUTTLE")
                        .left())
                .isEqualTo(Left.NOTHING);
        assertThat(only(roll("A001", Card.LOST).proven("SHUTTLE"), "SHUTTLE").left())
                .isEqualTo(Left.NOTHING);
    }

    @Test
    void whatIsLostTogetherDoesNotStandInForEachOther() {
        RollsAbout roll = roll("A001", Card.HOLDS_ROLL).proven("SHUTTLE").proven("TAPE");
        assertThat(only(roll, "SHUTTLE").left()).isEqualTo(Left.ONE_COPY);
        assertThat(only(roll, "SHUTTLE", "TAPE").left()).isEqualTo(Left.CARD);
        LossLine all = only(roll, "SHUTTLE", "TAPE", "CARD-A001");
        assertThat(all.left()).isEqualTo(Left.NOTHING);
        assertThat(all.on()).containsExactly("CARD-A001", "SHUTTLE", "TAPE");
    }

    private static LossLine only(RollsAbout roll, String... lost) {
        return LossLine.of(
                        java.util.Arrays.stream(lost).map(RollsAbout::id).collect(java.util.stream.Collectors.toSet()),
                        List.of(roll.there()))
                .get(0);
    }
}

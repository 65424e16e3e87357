package rollbook.shipment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static rollbook.shipment.RollsAbout.roll;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import rollbook.shipment.TravelRisks.Kind;
import rollbook.shipment.TravelRisks.Risk;
import rollbook.verification.RollCopies;
import rollbook.verification.RollCopies.Card;

/** Each case worked by hand. */
class TravelRisksTests {

    @Test
    void whatIsProvenElsewhereTravelsWithoutRisk() {
        assertThat(risks(roll("A001", Card.ERASED)
                        .proven("SHUTTLE")
                        .proven("ARRAY")
                        .there()))
                .isEmpty();
        assertThat(risks(roll("A001", Card.HOLDS_ROLL)
                        .unproven("SHUTTLE")
                        .proven("ARRAY")
                        .there()))
                .isEmpty();
    }

    @Test
    void theOnlyProvenCopyIsTold() {
        assertThat(risks(roll("A001", Card.ERASED)
                        .proven("SHUTTLE")
                        .unproven("ARRAY")
                        .there()))
                .containsExactly(new Risk(Kind.ONLY_PROOF, List.of("A001"), List.of("SHUTTLE"), List.of("CARD-A001")));
        assertThat(risks(roll("A001", Card.LOST).proven("SHUTTLE").there()))
                .extracting(Risk::kind)
                .containsExactly(Kind.ONLY_PROOF);
        assertThat(risks(roll("A001", Card.CLEARED).proven("SHUTTLE").there()))
                .extracting(Risk::kind)
                .containsExactly(Kind.ONLY_PROOF_BUT_CARD);
    }

    @Test
    void aCopyInQuarantineElsewhereIsNoProof() {
        assertThat(risks(roll("A001", Card.ERASED)
                        .proven("SHUTTLE")
                        .quarantined("ARRAY")
                        .there()))
                .extracting(Risk::kind)
                .containsExactly(Kind.ONLY_PROOF);
    }

    @Test
    void allProvenCopiesInOneShipmentAreTold() {
        assertThat(risks(roll("A001", Card.ERASED)
                        .proven("SHUTTLE")
                        .proven("TAPE")
                        .there()))
                .containsExactly(
                        new Risk(Kind.ALL_PROOF, List.of("A001"), List.of("SHUTTLE", "TAPE"), List.of("CARD-A001")));
        assertThat(risks(roll("A001", Card.HOLDS_ROLL)
                        .proven("SHUTTLE")
                        .proven("TAPE")
                        .there()))
                .extracting(Risk::kind)
                .containsExactly(Kind.ALL_PROOF_BUT_CARD);
    }

    @Test
    void aCardThatTravelsAlongDoesNotStandInForWhatTravels() {
        RollCopies roll = roll("A001", Card.HOLDS_ROLL).proven("SHUTTLE").there();
        assertThat(TravelRisks.of(box("SHUTTLE", "CARD-A001"), List.of(roll)))
                .extracting(Risk::kind)
                .containsExactly(Kind.ONLY_PROOF);
    }

    @Test
    void aCardWithTheOnlyCopyIsTold() {
        RollCopies roll = roll("A001", Card.HOLDS_ROLL).unproven("ARRAY").there();
        assertThat(TravelRisks.of(box("CARD-A001"), List.of(roll)))
                .containsExactly(
                        new Risk(Kind.ONLY_ORIGINAL, List.of("A001"), List.of("CARD-A001"), List.of("CARD-A001")));
    }

    @Test
    void anUnprovenCopyWhoseCardIsGoneIsAllThereIs() {
        assertThat(risks(roll("A001", Card.ERASED).unproven("SHUTTLE").there()))
                .extracting(Risk::kind)
                .containsExactly(Kind.ONLY_ORIGINAL);
        assertThat(risks(roll("A001", Card.HOLDS_ROLL).unproven("SHUTTLE").there()))
                .extracting(Risk::kind)
                .containsExactly(Kind.UNPROVEN);
    }

    @Test
    void rollsThatTravelAlikeAreToldTogetherTheWorstFirst() {
        assertThat(risks(
                        roll("A003", Card.HOLDS_ROLL).unproven("SHUTTLE").there(),
                        roll("A002", Card.ERASED).proven("SHUTTLE").there(),
                        roll("A001", Card.ERASED).proven("SHUTTLE").there(),
                        roll("A004", Card.ERASED).proven("TAPE").there()))
                .extracting(Risk::kind, Risk::rolls)
                .containsExactly(
                        tuple(Kind.ONLY_PROOF, List.of("A001", "A002")),
                        tuple(Kind.ONLY_PROOF, List.of("A004")),
                        tuple(Kind.UNPROVEN, List.of("A003")));
    }

    private static List<Risk> risks(RollCopies... rolls) {
        return TravelRisks.of(box("SHUTTLE", "TAPE"), List.of(rolls));
    }

    private static Map<UUID, String> box(String... codes) {
        return Arrays.stream(codes).collect(Collectors.toMap(RollsAbout::id, Function.identity()));
    }
}

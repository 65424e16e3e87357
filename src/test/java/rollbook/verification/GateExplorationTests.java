package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class GateExplorationTests {
    private static final int AT_LEAST = 1_000_000;

    @Test
    void inNoOrderOfActsIsACardErasedThatLackedItsProofAtThatMoment() {
        long began = System.nanoTime();
        GateProof proof = new GateProof();
        GateExploration.Result result = GateExploration.from(GateDay.states(proof), proof, AT_LEAST);
        System.out.printf(
                "The gate, explored: %,d states, %,d acts tried, all up to %d acts from any point of a day, %.1f s%n",
                result.states(), result.transitions(), result.depth(), (System.nanoTime() - began) / 1e9);
        assertThat(result.fault()).isNull();
        assertThat(result.states()).isGreaterThanOrEqualTo(AT_LEAST);
    }
}

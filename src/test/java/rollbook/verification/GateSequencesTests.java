package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.config.AutowireCapableBeanFactory;
import rollbook.testing.PortalTest;

/** Random lives of cards, played by the model and by the portal with its database: they must come out the same. */
@PortalTest
class GateSequencesTests {
    private static final int SEQUENCES = Integer.getInteger("rollbook.gate.sequences", 2_000);

    @Autowired
    AutowireCapableBeanFactory beans;

    @Test
    void afterEveryActThePortalIsInTheStateThatTheModelIsIn() {
        long seed = Long.getLong("rollbook.gate.seed", new SplittableRandom().nextLong());
        System.out.printf("The gate, played: %,d sequences from seed %d%n", SEQUENCES, seed);
        SplittableRandom seeds = new SplittableRandom(seed);
        GateProof proof = new GateProof();
        GateStage portal = beans.createBean(GatePortal.class);
        long began = System.nanoTime();
        long cpu = java.lang.management.ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        int erased = 0;
        for (int i = 0; i < SEQUENCES; i++) {
            GateSequence sequence = GateSequence.random(seeds.nextLong(), proof);
            assertThat(sequence.difference(portal))
                    .as("sequence %d from seed %d", i, seed)
                    .isNull();
            erased += sequence.told().toString().contains("ERASED") ? 1 : 0;
        }
        System.out.printf(
                "The gate, played: %,d of %,d sequences erased a card, %.1f s CPU, %.1f s%n",
                erased, SEQUENCES, (java.lang.management.ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - cpu) / 1e9, (System.nanoTime() - began) / 1e9);
        assertThat(erased).as("sequences that come as far as an erasure").isGreaterThan(SEQUENCES / 10);
    }
}

package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.config.AutowireCapableBeanFactory;
import rollbook.testing.PortalTest;

/** Random lives of cards, played by the model and by the portal with its database: they must come out the same. */
@PortalTest
class GateSequencesTests {
    private static final int SEQUENCES = Integer.getInteger("rollbook.gate.sequences", 2_000);
    private static final int THREADS = 2;

    @Autowired
    AutowireCapableBeanFactory beans;

    @Test
    void afterEveryActThePortalIsInTheStateThatTheModelIsIn() throws Exception {
        long seed = Long.getLong("rollbook.gate.seed", new SplittableRandom().nextLong());
        SplittableRandom seeds = new SplittableRandom(seed);
        long began = System.nanoTime();
        ExecutorService threads = Executors.newFixedThreadPool(THREADS);
        int erased = 0;
        try {
            List<Future<Integer>> shares = new ArrayList<>();
            for (int share = 0; share < THREADS; share++) {
                SplittableRandom ofShare = seeds.split();
                shares.add(threads.submit(() -> play(SEQUENCES / THREADS, ofShare, seed)));
            }
            for (Future<Integer> share : shares) {
                erased += share.get();
            }
        } finally {
            threads.shutdownNow();
        }
        System.out.printf(
                "The gate, played: %,d sequences from seed %d, %,d of them erased a card, %.1f s%n",
                SEQUENCES, seed, erased, (System.nanoTime() - began) / 1e9);
        assertThat(erased).as("sequences that come as far as an erasure").isGreaterThan(SEQUENCES / 10);
    }

    private int play(int number, SplittableRandom seeds, long seed) {
        GateProof proof = new GateProof();
        GateStage portal = beans.createBean(GatePortal.class);
        int erased = 0;
        for (int i = 0; i < number; i++) {
            GateSequence sequence = GateSequence.random(seeds.nextLong(), proof);
            assertThat(sequence.difference(portal))
                    .as("-Drollbook.gate.seed=%d, sequence %d", seed, i)
                    .isNull();
            erased += sequence.told().toString().contains("ERASED") ? 1 : 0;
        }
        return erased;
    }
}

package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import rollbook.testing.PortalTest;

/** Builds faults in, and expects that the exploration and the played sequences both find each of them. */
@PortalTest
class GateMutationTests {
    private static final int MOST_STATES = 1_000_000;
    private static final int SEQUENCES = 2_000;
    private static final int PLAYED_AT_MOST = 5;
    private static final long SEED = 3;

    @Autowired
    ApplicationContext context;

    @Test
    void everyFaultIsFoundByTheExplorationAndByTheSequences() {
        List<GateSequence> sequences = sequences();
        List<String> table = new ArrayList<>();
        List<String> missed = new ArrayList<>();
        for (GateMutant mutant : GateMutant.ALL) {
            GateWorld faulty = MutatedPackage.with(mutant.explored());
            GateWorld.Explored explored = faulty.explore(MOST_STATES);
            int played = played(
                    sequences, faulty, MutatedPackage.with(mutant.played()).portal(context));
            table.add("%-70s explored: %-55s after %,9d states, %d acts deep   played: %s"
                    .formatted(
                            mutant.name(),
                            explored.fault() == null
                                    ? "missed"
                                    : explored.fault().replaceFirst(" by:.*", ""),
                            explored.states(),
                            explored.depth() + 1,
                            played < 0 ? "missed" : "sequence " + (played + 1)));
            if (explored.fault() == null || played < 0) {
                missed.add(mutant.name());
            }
        }
        System.out.println(String.join(System.lineSeparator(), table));
        assertThat(missed).isEmpty();
        assertThat(GateMutant.ALL).hasSizeGreaterThanOrEqualTo(10);
    }

    /**
     * The first sequence that comes out otherwise in the faulty portal. Those that come out as they should even in a model
     * with the same fault are not played: they would come out as they should.
     */
    private static int played(List<GateSequence> sequences, GateWorld faulty, GateStage portal) {
        int played = 0;
        GateStage model = faulty.model();
        for (int i = 0; i < sequences.size() && played < PLAYED_AT_MOST; i++) {
            if (sequences.get(i).difference(model) != null) {
                played++;
                if (difference(sequences.get(i), portal) != null) {
                    return i;
                }
            }
        }
        return -1;
    }

    private static @Nullable String difference(GateSequence sequence, GateStage portal) {
        try {
            return sequence.difference(portal);
        } catch (RuntimeException broken) {
            return broken.toString();
        }
    }

    private static List<GateSequence> sequences() {
        GateProof proof = new GateProof();
        java.util.SplittableRandom seeds = new java.util.SplittableRandom(SEED);
        List<GateSequence> sequences = new ArrayList<>();
        for (int i = 0; i < SEQUENCES; i++) {
            sequences.add(GateSequence.random(seeds.nextLong(), proof));
        }
        return sequences;
    }
}

package rollbook.verification;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Tries every act in every state, breadth first from some states, and keeps each different state once: first those one
 * act away, then those two acts away, and so on.
 */
final class GateExploration {
    private static final int WORDS = GateModel.WORDS;
    private static final int BLOCK = 1 << 16;

    private final GateModel model;
    private final GateModel before;
    private final int mostStates;
    private final List<long[]> blocks = new ArrayList<>();
    private int[] table = new int[1 << 16];
    private int[] cameFrom = new int[1 << 16];
    private short[] cameBy = new short[1 << 16];
    private int states;
    private long transitions;
    private int depth;

    /**
     * @param depth how many acts away from a start every state was tried
     * @param fault what went wrong first, and how it came to that; null if nothing did
     */
    record Result(
            int states,
            long transitions,
            int depth,
            @Nullable String fault) {}

    private GateExploration(GateProof proof, int mostStates) {
        this.model = new GateModel(GatePolicy.TWO_COPIES, proof);
        this.before = new GateModel(GatePolicy.TWO_COPIES, proof);
        this.mostStates = mostStates;
        Arrays.fill(table, -1);
    }

    /** Explores until something is wrong, or there are so many states that no further depth is begun. */
    static Result from(List<long[]> starts, GateProof proof, int mostStates) {
        GateExploration exploration = new GateExploration(proof, mostStates);
        starts.forEach(start -> exploration.keep(start, -1, 0));
        String fault = exploration.explore();
        return new Result(exploration.states, exploration.transitions, exploration.depth, fault);
    }

    private @Nullable String explore() {
        int next = 0;
        while (next < states && states < mostStates) {
            int end = states;
            for (; next < end; next++) {
                String fault = tryAll(next);
                if (fault != null) {
                    return fault;
                }
            }
            depth++;
        }
        return null;
    }

    private @Nullable String tryAll(int state) {
        long[] packed = unpack(state);
        before.become(packed);
        for (int act = 0; act < GateAct.ALL.size(); act++) {
            GateAct tried = GateAct.ALL.get(act);
            if (before.possible(tried)) {
                model.become(packed);
                transitions++;
                if (model.apply(tried)) {
                    String fault = GateOracle.fault(before, tried, model);
                    if (fault != null) {
                        return fault + " by: " + path(state) + ", " + tried;
                    }
                    keep(model.state(), state, act);
                }
            }
        }
        return null;
    }

    private String path(int state) {
        List<String> acts = new ArrayList<>();
        int at = state;
        for (; cameFrom[at] >= 0; at = cameFrom[at]) {
            acts.add(GateAct.ALL.get(cameBy[at]).toString());
        }
        acts.add("start " + at);
        Collections.reverse(acts);
        return String.join(", ", acts);
    }

    private long[] unpack(int state) {
        long[] packed = new long[WORDS];
        System.arraycopy(blocks.get(state / BLOCK), state % BLOCK * WORDS, packed, 0, WORDS);
        return packed;
    }

    private void keep(long[] packed, int from, int act) {
        int slot = slot(packed);
        if (table[slot] >= 0) {
            return;
        }
        if (states % BLOCK == 0) {
            blocks.add(new long[BLOCK * WORDS]);
        }
        if (states == cameFrom.length) {
            cameFrom = Arrays.copyOf(cameFrom, 2 * states);
            cameBy = Arrays.copyOf(cameBy, 2 * states);
        }
        System.arraycopy(packed, 0, blocks.get(states / BLOCK), states % BLOCK * WORDS, WORDS);
        cameFrom[states] = from;
        cameBy[states] = (short) act;
        table[slot] = states++;
        if (2 * states > table.length) {
            grow();
        }
    }

    private int slot(long[] packed) {
        long hash = 0;
        for (long word : packed) {
            hash = (hash ^ word) * 0x9E3779B97F4A7C15L;
            hash ^= hash >>> 32;
        }
        int slot = (int) hash & table.length - 1;
        while (table[slot] >= 0 && !isAt(table[slot], packed)) {
            slot = slot + 1 & table.length - 1;
        }
        return slot;
    }

    private boolean isAt(int state, long[] packed) {
        int at = state % BLOCK * WORDS;
        return Arrays.equals(blocks.get(state / BLOCK), at, at + WORDS, packed, 0, WORDS);
    }

    private void grow() {
        table = new int[2 * table.length];
        Arrays.fill(table, -1);
        for (int state = 0; state < states; state++) {
            table[slot(unpack(state))] = state;
        }
    }
}

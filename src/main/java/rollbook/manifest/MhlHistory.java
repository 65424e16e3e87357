package rollbook.manifest;

import java.util.List;

/**
 * The history of one folder, judged: {@link MhlHistories}.
 *
 * @param folder that it covers, as its files were handed in; empty where {@code ascmhl} stood at the top
 * @param generations in their order, those that the chain doesn't know last
 */
public record MhlHistory(String folder, List<MhlGeneration> generations, List<HistoryProblem> problems) {
    public MhlHistory {
        generations = List.copyOf(generations);
        problems = List.copyOf(problems);
    }

    /** Whether the chain vouches for every hash list and all are there. */
    public boolean isWhole() {
        return generations.stream().allMatch(generation -> generation.state() == MhlGeneration.State.GOOD);
    }
}

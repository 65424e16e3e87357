package rollbook.turnaround;

import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Counts the day’s offloads and knows which of them are to prove bad. */
final class Mishaps {
    private final Set<Integer> repeated = new HashSet<>();
    private int offloads;

    Mishaps(List<Mishap> mishaps) {
        for (Mishap mishap : mishaps) {
            if (mishap instanceof Mishap.Repeat repeat) {
                repeated.add(repeat.offloadNumber());
            }
        }
    }

    boolean nextProvesBad() {
        offloads++;
        return repeated.contains(offloads);
    }
}

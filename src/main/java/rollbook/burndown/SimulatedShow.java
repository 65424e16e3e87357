package rollbook.burndown;

import java.util.List;

/** The courses of a show that were played: what they say together, and each pool's room on each of them. */
public record SimulatedShow(Outlook outlook, List<PoolPaths> paths) {
    public SimulatedShow {
        paths = List.copyOf(paths);
    }
}

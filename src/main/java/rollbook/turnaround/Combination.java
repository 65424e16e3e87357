package rollbook.turnaround;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import rollbook.turnaround.OffloadPart.CardWay;
import rollbook.turnaround.OffloadPart.WrittenKind;

/** All that the bytes of a session pass. Sessions of one combination differ by chance only. */
record Combination(CardWay way, Set<WrittenKind> kinds) {
    Combination {
        kinds = Set.copyOf(kinds);
    }

    /** The way first, then what is written, by name. */
    List<OffloadPart> parts() {
        List<OffloadPart> parts = new ArrayList<>();
        parts.add(way);
        kinds.stream().sorted().forEach(parts::add);
        return parts;
    }
}

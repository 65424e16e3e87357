package rollbook.manifest;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Gathers findings of a kind into one, with their number and the first few names. */
final class BagFindings {
    private static final int EXAMPLES = 5;
    private static final int INFO_LINES = 100;

    private final List<ArchiveFinding> lines = new ArrayList<>();
    private final Map<BagFinding, Tally> tallies = new EnumMap<>(BagFinding.class);

    private static final class Tally {
        long count;
        final List<String> examples = new ArrayList<>();
    }

    void add(BagFinding kind, String example) {
        add(kind, 1, List.of(example));
    }

    void add(BagFinding kind, long count, List<String> examples) {
        Tally tally = tallies.computeIfAbsent(kind, any -> new Tally());
        tally.count += count;
        examples.stream().limit(EXAMPLES - tally.examples.size()).forEach(tally.examples::add);
    }

    void addInfo(BagInfo.Line line) {
        if (lines.size() < INFO_LINES) {
            BagFinding kind = BagFinding.INFO_LINE;
            lines.add(new ArchiveFinding(kind.weight(), kind.messageKey(), null, List.of(line.label(), line.value())));
        }
    }

    /** The weightiest first, the lines about the bag last. */
    List<ArchiveFinding> all() {
        List<ArchiveFinding> all = new ArrayList<>();
        for (ArchiveFinding.Weight weight : ArchiveFinding.Weight.values()) {
            tallies.forEach((kind, tally) -> {
                if (kind.weight() == weight) {
                    String names = String.join(", ", tally.examples);
                    boolean more = !names.isEmpty() && tally.count > tally.examples.size();
                    all.add(new ArchiveFinding(
                            kind.weight(), kind.messageKey(), tally.count, List.of(more ? names + " …" : names)));
                }
            });
        }
        all.addAll(lines);
        return all;
    }
}

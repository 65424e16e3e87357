package rollbook.manifest;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Gathers findings of a kind into one, with their number and the first few names. */
final class BagFindings {
    private static final int EXAMPLES = 5;
    private static final int INFO_LINES = 100;

    private final String base;
    private final List<ArchiveFinding> lines = new ArrayList<>();
    private final Map<BagFinding, Tally> tallies = new EnumMap<>(BagFinding.class);

    /** @param base the bag's folder: an archive may hold several */
    BagFindings(String base) {
        this.base = base;
    }

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
        examples.stream()
                .limit(EXAMPLES - tally.examples.size())
                .forEach(example -> tally.examples.add(base + example));
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
                    String more = tally.count > tally.examples.size() ? " …" : "";
                    all.add(new ArchiveFinding(kind.weight(), kind.messageKey(), tally.count, List.of(names + more)));
                }
            });
        }
        all.addAll(lines);
        return all;
    }
}

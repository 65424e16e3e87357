package rollbook.manifest;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Gathers a document's remarks, one of a kind, so that a million like ones take no room. */
final class ManifestRemarks {
    private final Map<ManifestRemark.Kind, ManifestRemark> remarks = new EnumMap<>(ManifestRemark.Kind.class);

    void add(ManifestRemark.Kind kind, long line, String example) {
        ManifestRemark first = remarks.get(kind);
        remarks.put(
                kind,
                first == null
                        ? new ManifestRemark(kind, 1, line, example)
                        : new ManifestRemark(kind, first.count() + 1, first.line(), first.example()));
    }

    List<ManifestRemark> all() {
        return List.copyOf(remarks.values());
    }
}

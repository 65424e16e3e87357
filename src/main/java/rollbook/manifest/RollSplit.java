package rollbook.manifest;

import java.util.List;

/** How one document is divided over rolls: every file belongs to exactly one part. */
public final class RollSplit {
    private final RollPaths paths;
    private final boolean looseTogether;
    private final List<RollPart> parts;

    RollSplit(RollPaths paths, boolean looseTogether, List<RollPart> parts) {
        this.paths = paths;
        this.looseTogether = looseTogether;
        this.parts = List.copyOf(parts);
    }

    /**
     * Where a file of the document belongs.
     *
     * @param folder the part's {@link RollPart#folder()}
     * @param path relative to that folder
     */
    public record Place(String folder, String path) {}

    /** In the order in which the document mentions them, folders of known rolls first. */
    public List<RollPart> parts() {
        return parts;
    }

    public Place place(String path) {
        RollPaths.Match match = paths.match(path);
        if (match != null) {
            return below(match.folder(), path);
        }
        return below(looseTogether ? "" : RollPaths.topFolder(path), path);
    }

    private static Place below(String folder, String path) {
        return folder.isEmpty() ? new Place("", path) : new Place(folder, path.substring(folder.length() + 1));
    }
}

package rollbook.manifest;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collection;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * The files of one roll as its manifests list them, by path. A path listed again is merged when its lines agree (lists
 * of several algorithms repeat every path) and kept as a contradiction when they don't. Adding is for one thread, reading
 * for any number.
 *
 * <p>Each file has a position. Those of the document that the listing began with come first, then what was added to it.
 */
public final class FileListing {
    private static final int NONE = -1;

    private final PackedEntries document;
    private final int skipped;
    private final PackedEntries added = new PackedEntries();
    /** Null as long as the paths are in ascending order and nobody needed it. */
    private @Nullable PathIndex index;

    /** Positions of one entry for each path: the first one, or what all of them say together. */
    private final BitSet files = new BitSet();
    /** By the position in {@link #files}, that of the first entry that contradicts it. */
    private final Map<Integer, Integer> contradictions = new HashMap<>();

    private final Reader reader;
    private int size;
    private boolean anyChecksums;

    public FileListing() {
        this(new PackedEntries(), 0);
    }

    private FileListing(PackedEntries document, int skipped) {
        this.document = document;
        this.skipped = skipped;
        this.reader = new Reader();
    }

    public static FileListing of(Collection<ManifestEntry> entries) {
        FileListing listing = new FileListing();
        entries.forEach(listing::add);
        return listing;
    }

    /** The part of a document, with paths relative to its folder. The document's entries are shared, not copied. */
    public static FileListing of(PackedEntries document, PartFilter part) {
        FileListing listing = new FileListing(document, part.folderBytes());
        PackedEntries.Cursor cursor = document.cursor();
        for (int position = 0; position < document.size(); position++) {
            cursor.moveTo(position);
            if (part.holds(cursor.path(), cursor.pathLength())) {
                if (document.isAscending()) {
                    listing.accept(position, cursor.checksums() > 0);
                } else {
                    listing.take(position, cursor);
                }
            }
        }
        return listing;
    }

    private void take(int position, PackedEntries.Cursor cursor) {
        byte[] path = cursor.path();
        int end = cursor.pathLength();
        long hash = PathIndex.hash(path, skipped, end);
        int earlier = index().find(hash, other -> reader.at(other).isAt(path, skipped, end));
        if (earlier < 0) {
            index().add(hash, position);
            accept(position, cursor.checksums() > 0);
        } else {
            settle(hash, earlier, cursor.entry(skipped));
        }
    }

    /** Adds the part of a document, with paths relative to its folder. */
    public void addAll(PackedEntries other, PartFilter part) {
        PackedEntries.Cursor cursor = other.cursor();
        for (int position = 0; position < other.size(); position++) {
            cursor.moveTo(position);
            if (part.holds(cursor.path(), cursor.pathLength())) {
                add(cursor.entry(part.folderBytes()));
            }
        }
    }

    public void add(ManifestEntry entry) {
        byte[] path = PackedEntries.bytes(entry.path());
        long hash = PathIndex.hash(path, 0, path.length);
        int earlier = index().find(hash, other -> reader.at(other).isAt(path, 0, path.length));
        if (earlier < 0) {
            int position = append(entry);
            index().add(hash, position);
            accept(position, !entry.checksums().isEmpty());
        } else {
            settle(hash, earlier, entry);
        }
    }

    private void accept(int position, boolean checksums) {
        files.set(position);
        size++;
        anyChecksums |= checksums;
    }

    private void settle(long hash, int earlierPosition, ManifestEntry entry) {
        ManifestEntry earlier = reader.at(earlierPosition).entry();
        if (contradicts(earlier, entry)) {
            if (!contradictions.containsKey(earlierPosition)) {
                contradictions.put(earlierPosition, append(entry));
            }
            return;
        }
        ManifestEntry merged = merged(earlier, entry);
        if (!merged.equals(earlier)) {
            int position = append(merged);
            index().replace(hash, earlierPosition, position);
            files.clear(earlierPosition);
            files.set(position);
            anyChecksums |= !merged.checksums().isEmpty();
            Integer contradiction = contradictions.remove(earlierPosition);
            if (contradiction != null) {
                contradictions.put(position, contradiction);
            }
        }
    }

    private int append(ManifestEntry entry) {
        added.add(entry);
        return Math.addExact(document.size(), added.size() - 1);
    }

    private synchronized PathIndex index() {
        if (index == null) {
            index = new PathIndex();
            Reader each = new Reader();
            for (int at = next(0); at >= 0; at = next(at + 1)) {
                index.add(each.at(at).hash(), at);
            }
        }
        return index;
    }

    /** Whether positions rise with paths. */
    private boolean isAscending() {
        return added.size() == 0 && document.isAscending();
    }

    /** Number of different paths. */
    public int size() {
        return size;
    }

    boolean hasChecksums() {
        return anyChecksums;
    }

    boolean isContradicted(int position) {
        return contradictions.containsKey(position);
    }

    /** The later entry that contradicts the first one of this path. */
    ManifestEntry contradiction(int position) {
        return new Reader().at(contradictions.get(position)).entry();
    }

    /** The position of the next file from here on, or -1; in the document's order, what several lines say together last. */
    int next(int position) {
        return files.nextSetBit(position);
    }

    Reader reader() {
        return new Reader();
    }

    /** The entries, of contradicting ones the first. */
    Iterable<ManifestEntry> entries() {
        return Entries::new;
    }

    private final class Entries implements Iterator<ManifestEntry> {
        private final Reader at = new Reader();
        private int next = files.nextSetBit(0);

        @Override
        public boolean hasNext() {
            return next >= 0;
        }

        @Override
        public ManifestEntry next() {
            if (next < 0) {
                throw new NoSuchElementException();
            }
            ManifestEntry entry = at.at(next).entry();
            next = files.nextSetBit(next + 1);
            return entry;
        }
    }

    /** Looks at one file at a time; going on to the next one is quickest. */
    final class Reader {
        private final PackedEntries.Cursor inDocument = document.cursor();
        private final PackedEntries.Cursor inAdded = added.cursor();
        private PackedEntries.Cursor cursor = inDocument;
        private int skip;
        private int position = -1;

        Reader at(int wanted) {
            boolean ofDocument = wanted < document.size();
            cursor = ofDocument ? inDocument : inAdded;
            skip = ofDocument ? skipped : 0;
            position = wanted;
            cursor.moveTo(ofDocument ? wanted : wanted - document.size());
            return this;
        }

        /**
         * Moves to the file that has the path of another listing's one, and tells its position; negative if there is
         * none. To be asked for one after the other in that listing's order, for where both are in ascending order the
         * search goes on from the last one and needs no index.
         */
        int find(Reader other) {
            byte[] path = other.cursor.path();
            int from = other.skip;
            int to = other.cursor.pathLength();
            if (isAscending() && other.listing().isAscending()) {
                return findAhead(path, from, to);
            }
            int following = files.nextSetBit(position + 1);
            if (following >= 0 && at(following).isAt(path, from, to)) {
                return following;
            }
            return index().find(
                            PathIndex.hash(path, from, to),
                            candidate -> at(candidate).isAt(path, from, to));
        }

        private int findAhead(byte[] path, int from, int to) {
            int ahead = position < 0 ? files.nextSetBit(0) : position;
            while (ahead >= 0) {
                int order = at(ahead).compareTo(path, from, to);
                if (order >= 0) {
                    return order == 0 ? ahead : NONE;
                }
                ahead = files.nextSetBit(ahead + 1);
            }
            return NONE;
        }

        private FileListing listing() {
            return FileListing.this;
        }

        private long hash() {
            return PathIndex.hash(cursor.path(), skip, cursor.pathLength());
        }

        private int compareTo(byte[] path, int from, int to) {
            return Arrays.compareUnsigned(cursor.path(), skip, cursor.pathLength(), path, from, to);
        }

        private boolean isAt(byte[] path, int from, int to) {
            return Arrays.equals(cursor.path(), skip, cursor.pathLength(), path, from, to);
        }

        ManifestEntry entry() {
            return cursor.entry(skip);
        }

        ManifestEntry.Action action() {
            return cursor.action();
        }

        boolean sizesDiffer(Reader other) {
            return cursor.sizesDiffer(other.cursor);
        }

        boolean plainlySameChecksums(Reader other) {
            return cursor.plainlySameChecksums(other.cursor);
        }
    }

    private static boolean contradicts(ManifestEntry one, ManifestEntry other) {
        return sizesDiffer(one, other) || Agreement.of(one.checksums(), other.checksums()) == Agreement.DIFFERENT;
    }

    static boolean sizesDiffer(ManifestEntry one, ManifestEntry other) {
        return one.sizeBytes() != null
                && other.sizeBytes() != null
                && !Objects.equals(one.sizeBytes(), other.sizeBytes());
    }

    private static ManifestEntry merged(ManifestEntry earlier, ManifestEntry later) {
        List<Checksum> checksums = new ArrayList<>(earlier.checksums());
        for (Checksum checksum : later.checksums()) {
            if (!checksums.contains(checksum)) {
                checksums.add(checksum);
            }
        }
        Long size = earlier.sizeBytes() == null ? later.sizeBytes() : earlier.sizeBytes();
        ManifestEntry.Action action =
                earlier.action().compareTo(later.action()) >= 0 ? earlier.action() : later.action();
        String previousPath = earlier.previousPath() == null ? later.previousPath() : earlier.previousPath();
        return new ManifestEntry(earlier.path(), size, checksums, action, earlier.line(), previousPath, null);
    }
}

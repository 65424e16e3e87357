package rollbook.manifest;

import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Files whose paths differ in one number of so many digits only, such as the frames of a clip; or one file without such
 * a number. The number stands at the end of the name or in front of its extension: {@code name.0000123.ext},
 * {@code name_0000123.ext}, {@code name0000123.ext} (common practice, no source).
 */
final class FileGroup {
    private static final int FEWEST_DIGITS = 3;
    private static final int MOST_DIGITS = 18;

    private final String head;
    private final String tail;
    private final int digits;
    private final @Nullable ClipName clip;
    private final boolean system;

    final NumberRuns numbers = new NumberRuns();
    private long entries;
    private long sizeBytes;
    private boolean sizesKnown = true;
    private @Nullable Checksum digest;
    private @Nullable NumberRuns empty;
    private @Nullable NumberRuns early;
    private @Nullable NumberRuns late;

    private FileGroup(String head, int digits, String tail, @Nullable ClipName clip, boolean system) {
        this.head = head;
        this.digits = digits;
        this.tail = tail;
        this.clip = clip;
        this.system = system;
    }

    /** The group that a path belongs to. A clip's own number is no number of a frame. */
    static FileGroup of(String path) {
        int name = path.lastIndexOf('/') + 1;
        ClipName clip = ClipName.in(path.substring(name));
        int end = stemEnd(path, name);
        int start = digitsStart(path, name, end);
        boolean numbered = end - start >= FEWEST_DIGITS
                && end - start <= MOST_DIGITS
                && (clip == null || name + clip.end() != end)
                && number(path, start, end) >= 0;
        ClipName ofFolder = clip == null ? clipOfFolder(path, name) : clip;
        boolean system = SystemFiles.isOne(path);
        return numbered
                ? new FileGroup(path.substring(0, start), end - start, path.substring(end), ofFolder, system)
                : new FileGroup(path, 0, "", ofFolder, system);
    }

    /** The same for all paths of a group, and seldom for others. */
    static int headHash(String path) {
        int name = path.lastIndexOf('/') + 1;
        int end = digitsStart(path, name, stemEnd(path, name));
        int hash = 0;
        for (int i = 0; i < end; i++) {
            hash = 31 * hash + path.charAt(i);
        }
        return hash ^ hash >>> 15;
    }

    /** The number of this path, 0 if the group has none; negative if the path doesn't belong here. */
    int numberOf(String path) {
        if (path.length() != head.length() + digits + tail.length() || !path.startsWith(head) || !path.endsWith(tail)) {
            return -1;
        }
        return digits == 0 ? 0 : number(path, head.length(), head.length() + digits);
    }

    void add(ManifestEntry entry, int number) {
        numbers.add(number);
        if (entries++ == 0 && !entry.checksums().isEmpty()) {
            digest = entry.checksums().get(0);
        }
        Long size = entry.sizeBytes();
        if (size == null) {
            sizesKnown = false;
        } else {
            sizeBytes = Math.addExact(sizeBytes, size);
        }
        if (entry.isEmpty()) {
            empty = with(empty, number);
        }
    }

    void addEarly(int number) {
        early = with(early, number);
    }

    void addLate(int number) {
        late = with(late, number);
    }

    private static NumberRuns with(@Nullable NumberRuns numbers, int number) {
        NumberRuns all = numbers == null ? new NumberRuns() : numbers;
        all.add(number);
        return all;
    }

    PathRange range() {
        return new PathRange(clip == null ? null : clip.text(), head, digits, tail, numbers.ranges());
    }

    /** What keeps the groups apart. */
    String key() {
        return head + '\0' + digits + '\0' + tail;
    }

    /** Room that the texts take, in characters. */
    int characters() {
        return head.length() + tail.length();
    }

    @Nullable
    ClipName clip() {
        return clip;
    }

    boolean isSystem() {
        return system;
    }

    boolean isNumbered() {
        return digits > 0;
    }

    int digits() {
        return digits;
    }

    long files() {
        return numbers.size();
    }

    /** The sum of the sizes; null where one isn't given or a file is listed again. */
    @Nullable
    Long sizeBytes() {
        return sizesKnown && entries == numbers.size() ? sizeBytes : null;
    }

    @Nullable
    NumberRuns empty() {
        return empty;
    }

    @Nullable
    NumberRuns early() {
        return early;
    }

    @Nullable
    NumberRuns late() {
        return late;
    }

    /** The first file's first digest; null if it has none. */
    @Nullable
    Checksum digest() {
        return digest;
    }

    /**
     * Whether the numbers count frames: on average at least two follow each other. Numbers that are a date or every
     * tenth frame don't.
     */
    boolean isSequence() {
        return digits > 0 && numbers.size() >= 2L * numbers.runs();
    }

    /** The path of one of its files. */
    String anyPath() {
        return head + "0".repeat(digits) + tail;
    }

    /** The path with a range of numbers in it, as seen from a folder whose path has so many characters. */
    String path(NumberRange range, int folderLength) {
        String path = digits == 0 ? head : head + range.padded(digits) + tail;
        return path.substring(folderLength);
    }

    /** Where the files lie, as seen from a folder whose path has so many characters. */
    String folder(int folderLength) {
        int slash = head.lastIndexOf('/');
        return slash < folderLength ? "" : head.substring(folderLength, slash);
    }

    /** All but the number, brought to one spelling. */
    String folded(Function<String, String> fold, int folderLength) {
        return fold.apply(head.substring(folderLength)) + '\0' + digits + '\0' + fold.apply(tail);
    }

    private static int stemEnd(String path, int name) {
        int dot = path.lastIndexOf('.');
        return dot > name && digitsStart(path, dot + 1, path.length()) > dot + 1 ? dot : path.length();
    }

    private static int digitsStart(String path, int from, int end) {
        int start = end;
        while (start > from && ClipName.isDigit(path.charAt(start - 1))) {
            start--;
        }
        return start;
    }

    private static int number(String path, int start, int end) {
        long number = 0;
        for (int i = start; i < end; i++) {
            char c = path.charAt(i);
            if (!ClipName.isDigit(c)) {
                return -1;
            }
            number = number * 10 + (c - '0');
            if (number > Integer.MAX_VALUE) {
                return -1;
            }
        }
        return (int) number;
    }

    private static @Nullable ClipName clipOfFolder(String path, int name) {
        for (int end = name - 1; end > 0; ) {
            int start = path.lastIndexOf('/', end - 1) + 1;
            ClipName clip = ClipName.in(path.substring(start, end));
            if (clip != null) {
                return clip;
            }
            end = start - 1;
        }
        return null;
    }
}

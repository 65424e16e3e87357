package rollbook.manifest;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;

/**
 * Sorts the files of an archive by what their names say: parts of histories, of bags, lists that stand alone, and the
 * rest, such as media, which is never looked into.
 */
final class ArchiveFolders {
    private static final Set<String> LIST_ENDINGS = Set.of(
            "mhl",
            "md5",
            "sha1",
            "sha256",
            "sha512",
            "xxh",
            "xxh64",
            "xxh3",
            "xxh128",
            "xxhash",
            "c4",
            "md5sum",
            "md5sums",
            "sha1sum",
            "sha1sums",
            "sha256sum",
            "sha256sums",
            "sha512sum",
            "sha512sums");
    private static final Set<String> TEXT_ENDINGS = Set.of("txt", "csv", "tsv", "sum", "sums", "sfv", "");

    private final List<String> ofHistories = new ArrayList<>();
    private final Set<String> bags = new TreeSet<>();
    private final List<String> lists = new ArrayList<>();
    private final List<String> texts = new ArrayList<>();
    private final List<String> others = new ArrayList<>();

    ArchiveFolders(Collection<String> paths) throws ManifestException {
        findBags(paths);
        for (String path : paths) {
            if (ending(path).equals("zip")) {
                throw ZipDirectory.problem(ManifestProblem.ZIP_NESTED, path);
            }
            sort(path);
        }
    }

    List<String> ofHistories() {
        return ofHistories;
    }

    /** Their folders, ended by a slash or empty. */
    Set<String> bags() {
        return bags;
    }

    /** Files that are called as lists of checksums are. */
    List<String> lists() {
        return lists;
    }

    /** Files that are called as any text is; only their content tells. */
    List<String> texts() {
        return texts;
    }

    List<String> others() {
        return others;
    }

    private void findBags(Collection<String> paths) {
        Set<String> bases = new TreeSet<>();
        for (String path : paths) {
            String name = name(path);
            boolean marks = name.equals(BagReader.DECLARATION)
                    || BagReader.MANIFEST.matcher(name).matches();
            if (marks && !isShadow(path)) {
                bases.add(path.substring(0, path.length() - name.length()));
            }
        }
        // A bag inside the payload of another one is payload.
        for (String base : bases) {
            if (bags.stream().noneMatch(outer -> base.startsWith(outer + BagPath.PAYLOAD))) {
                bags.add(base);
            }
        }
    }

    private void sort(String path) {
        if (isShadow(path)) {
            others.add(path);
        } else if (MhlHistories.takes(path)) {
            ofHistories.add(path);
        } else if (bags.stream().anyMatch(base -> describes(base, path))) {
            return;
        } else if (bags.stream().anyMatch(path::startsWith)) {
            others.add(path);
        } else if (LIST_ENDINGS.contains(ending(path)) || LIST_ENDINGS.contains(lower(path))) {
            lists.add(path);
        } else if (TEXT_ENDINGS.contains(ending(path))) {
            texts.add(path);
        } else {
            others.add(path);
        }
    }

    /** What lies beside the payload folder describes the bag. */
    private static boolean describes(String base, String path) {
        return path.startsWith(base) && path.indexOf('/', base.length()) < 0;
    }

    /** What some systems put beside every file. */
    private static boolean isShadow(String path) {
        return path.startsWith("__MACOSX/")
                || path.contains("/__MACOSX/")
                || name(path).startsWith("._");
    }

    private static String name(String path) {
        return path.substring(path.lastIndexOf('/') + 1);
    }

    private static String lower(String path) {
        return name(path).toLowerCase(Locale.ROOT);
    }

    private static String ending(String path) {
        String name = lower(path);
        int dot = name.lastIndexOf('.');
        return dot < 0 ? "" : name.substring(dot + 1);
    }
}

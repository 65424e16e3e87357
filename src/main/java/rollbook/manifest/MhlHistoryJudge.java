package rollbook.manifest;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.HistoryProblem.Kind;
import rollbook.manifest.MhlChain.Link;
import rollbook.manifest.MhlGeneration.State;

/** What was handed in of one history, and the judgement of it. All problems are gathered; none ends the judging. */
final class MhlHistoryJudge {
    private final String folder;
    private final Map<String, FoundManifest> found = new TreeMap<>();
    private final List<HistoryProblem> problems = new ArrayList<>();
    private final Set<String> refuted = new HashSet<>();
    private @Nullable MhlChain chain;
    private boolean chainUnreadable;

    MhlHistoryJudge(String folder) {
        this.folder = folder;
    }

    void add(FoundManifest manifest) {
        found.put(manifest.path(), manifest);
    }

    void chain(MhlChain read) {
        chain = read;
    }

    void chainUnreadable() {
        chainUnreadable = true;
    }

    /**
     * Checks the references to hash lists of inner histories. One to an older hash list is lawful: what is done to an
     * inner history alone isn't recorded above it (5.3.2).
     */
    void refer(Map<String, MhlHistoryJudge> histories) {
        Set<MhlReference> seen = new HashSet<>();
        for (FoundManifest manifest : found.values()) {
            for (MhlReference reference : manifest.references()) {
                if (seen.add(reference)) {
                    refer(reference, histories);
                }
            }
        }
    }

    private void refer(MhlReference reference, Map<String, MhlHistoryJudge> histories) {
        String path = under(folder, reference.path());
        String inner = IgnorePatterns.directoryOf(IgnorePatterns.directoryOf(path));
        MhlHistoryJudge history = histories.get(inner);
        FoundManifest manifest = history == null ? null : history.found.get(path);
        if (history == null) {
            problem(Kind.REFERENCE_ELSEWHERE, reference.path());
        } else if (manifest == null) {
            problem(Kind.REFERENCE_MISSING, reference.path());
        } else if (!manifest.c4().equals(reference.c4())) {
            problem(Kind.REFERENCE_C4_DIFFERS, reference.path());
            history.refuted.add(path);
        }
    }

    MhlHistory judge() {
        if (chain == null) {
            problem(chainUnreadable ? Kind.CHAIN_UNREADABLE : Kind.CHAIN_MISSING, MhlChain.FILE_NAME);
        } else {
            checkSequence(chain.links());
        }
        Map<String, MhlGeneration> generations = new LinkedHashMap<>();
        inOrder().forEach(link -> addLink(generations, link));
        found.values().stream()
                .filter(manifest -> !generations.containsKey(manifest.path()))
                .sorted(Comparator.comparing(
                        manifest -> number(manifest.path()), Comparator.nullsLast(Comparator.naturalOrder())))
                .map(manifest -> new MhlGeneration(manifest.path(), number(manifest.path()), state(manifest, null)))
                .toList()
                .forEach(generation -> generations.put(generation.path(), generation));
        checkNames(generations.values());
        checkSuccession(generations.values());
        return new MhlHistory(folder, List.copyOf(generations.values()), problems);
    }

    private List<Link> inOrder() {
        return chain == null
                ? List.of()
                : chain.links().stream()
                        .sorted(Comparator.comparing(Link::sequence, Comparator.nullsLast(Comparator.naturalOrder())))
                        .toList();
    }

    private void addLink(Map<String, MhlGeneration> generations, Link link) {
        String inside = inside(link.path());
        if (link.sequence() == null || link.c4() == null || inside == null) {
            problem(Kind.LINK_INCOMPLETE, link.path());
        }
        String path = under(under(folder, MhlHistories.FOLDER), inside == null ? link.path() : inside);
        FoundManifest manifest = inside == null ? null : found.get(path);
        State state = manifest == null ? State.MISSING : state(manifest, link);
        MhlGeneration earlier = generations.get(path);
        if (earlier == null) {
            generations.put(path, new MhlGeneration(path, link.sequence(), state));
        } else {
            problem(Kind.LINK_REPEATED, link.path());
            generations.put(path, earlier.with(state.compareTo(earlier.state()) > 0 ? state : earlier.state()));
        }
    }

    /** The path in its most direct form, or null when it leads out of the folder. */
    private static @Nullable String inside(String path) {
        try {
            return ListedPath.of(path, 1, 1);
        } catch (ManifestException unsafe) {
            return null;
        }
    }

    private State state(FoundManifest manifest, @Nullable Link link) {
        if (!manifest.readable()) {
            return State.UNREADABLE;
        }
        boolean differs = link != null && !manifest.c4().equals(link.c4());
        if (differs || refuted.contains(manifest.path())) {
            return State.C4_DIFFERS;
        }
        return link == null ? State.NOT_IN_CHAIN : State.GOOD;
    }

    /** Numbers start at 1 and grow by 1 in the order of the file (7.4); a gap is where a hash list was taken out. */
    private void checkSequence(List<Link> links) {
        int expected = 1;
        for (Link link : links) {
            if (link.sequence() == null) {
                continue;
            }
            if (link.sequence() != expected) {
                problem(Kind.SEQUENCE_BROKEN, link.path(), String.valueOf(link.sequence()), String.valueOf(expected));
            }
            expected = link.sequence() + 1;
        }
    }

    private void checkNames(Iterable<MhlGeneration> generations) {
        Set<String> folders = new TreeSet<>();
        if (!folder.isEmpty()) {
            folders.add(folder.substring(folder.lastIndexOf('/') + 1));
        }
        for (MhlGeneration generation : generations) {
            String fileName = fileName(generation.path());
            MhlName name = MhlName.of(fileName);
            if (name == null) {
                problem(Kind.NAME_UNUSUAL, fileName);
                continue;
            }
            if (generation.sequence() != null && generation.sequence() != name.number()) {
                problem(Kind.NUMBER_DIFFERS, fileName, String.valueOf(generation.sequence()));
            }
            if (folders.add(name.folder()) && folders.size() > 1) {
                problem(Kind.FOLDER_DIFFERS, fileName, name.folder());
            }
        }
    }

    private void checkSuccession(Iterable<MhlGeneration> generations) {
        FoundManifest before = null;
        for (MhlGeneration generation : generations) {
            FoundManifest manifest = found.get(generation.path());
            if (manifest == null || !manifest.readable() || generation.state() == State.NOT_IN_CHAIN) {
                continue;
            }
            if (before != null) {
                checkSuccession(before, manifest);
            }
            before = manifest;
        }
    }

    private void checkSuccession(FoundManifest before, FoundManifest after) {
        if (before.created() != null
                && after.created() != null
                && after.created().isBefore(before.created())) {
            problem(Kind.DATE_BACKWARDS, fileName(after.path()), fileName(before.path()));
        }
        Set<String> kept = new HashSet<>(after.ignored());
        before.ignored().stream()
                .filter(pattern -> !kept.contains(pattern))
                .findFirst()
                .ifPresent(pattern -> problem(Kind.PATTERN_DROPPED, fileName(after.path()), pattern));
    }

    private void problem(Kind kind, String subject, String... more) {
        problems.add(HistoryProblem.of(kind, subject, more));
    }

    private static @Nullable Integer number(String path) {
        MhlName name = MhlName.of(fileName(path));
        return name == null ? null : name.number();
    }

    private static String fileName(String path) {
        return path.substring(path.lastIndexOf('/') + 1);
    }

    private static String under(String folder, String path) {
        return folder.isEmpty() ? path : folder + "/" + path;
    }
}

package rollbook.manifest;

import java.io.IOException;
import java.io.InputStream;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import rollbook.manifest.ArchiveFinding.Weight;

/** Finds the manifests in an archive and judges them by what lies beside them: chains and tag manifests. */
public final class ArchiveReader {
    /** Far more than a production makes in a day. */
    public static final int MAX_MEMBERS = 10_000;
    /** A text of another kind is looked into only as far as this. */
    private static final int MAX_TEXT_BYTES = 64 << 20;

    private static final int NAMES = 20;

    private final ManifestArchive archive;
    private final ArchiveFolders folders;
    private final List<ArchiveMember> members = new ArrayList<>();
    private final List<ArchiveFinding> findings = new ArrayList<>();
    private final List<String> others;

    private ArchiveReader(ManifestArchive archive) throws ManifestException {
        this.archive = archive;
        this.folders = new ArchiveFolders(archive.paths());
        this.others = new ArrayList<>(folders.others());
    }

    public static ArchiveContents read(ManifestArchive archive) throws IOException, ManifestException {
        return new ArchiveReader(archive).read();
    }

    private ArchiveContents read() throws IOException, ManifestException {
        if ((long) folders.ofHistories().size()
                        + folders.lists().size()
                        + folders.texts().size()
                > MAX_MEMBERS) {
            throw ZipDirectory.problem(ManifestProblem.ZIP_TOO_MANY_MANIFESTS, MAX_MEMBERS);
        }
        readHistories();
        for (String base : folders.bags()) {
            readBag(base);
        }
        List<String> lists = lists();
        lists.forEach(path -> members.add(ArchiveMember.alone(path)));
        boolean histories = !folders.ofHistories().isEmpty();
        if (members.isEmpty() && !histories && folders.bags().isEmpty()) {
            throw ZipDirectory.problem(ManifestProblem.ZIP_NOTHING);
        }
        if (!others.isEmpty()) {
            String names = String.join(", ", others.subList(0, Math.min(NAMES, others.size())));
            findings.add(new ArchiveFinding(
                    Weight.REMARK,
                    "manifest.archive.passed-over",
                    (long) others.size(),
                    List.of(others.size() > NAMES ? names + " …" : names)));
        }
        findings.sort(Comparator.comparing(ArchiveFinding::weight));
        return new ArchiveContents(format(histories, !lists.isEmpty()), members, findings);
    }

    private ManifestFormat format(boolean histories, boolean lists) {
        int bags = folders.bags().size();
        if (histories && bags == 0 && !lists) {
            return ManifestFormat.MHL_HISTORY;
        }
        return bags == 1 && !histories && !lists ? ManifestFormat.BAG : ManifestFormat.ARCHIVE;
    }

    private void readHistories() throws IOException, ManifestException {
        MhlHistories histories = new MhlHistories();
        Map<String, String> byNormalForm = new HashMap<>();
        for (String path : folders.ofHistories()) {
            byNormalForm.put(Normalizer.normalize(path, Normalizer.Form.NFC), path);
            archive.read(path, in -> {
                histories.add(path, in);
                return path;
            });
        }
        for (MhlHistory history : histories.judge()) {
            // One that the chain doesn't know stands where its own number puts it, never in front of all others.
            List<MhlGeneration> inOrder = new ArrayList<>(history.generations());
            inOrder.sort(
                    Comparator.comparing(MhlGeneration::sequence, Comparator.nullsFirst(Comparator.naturalOrder())));
            for (MhlGeneration generation : inOrder) {
                String path = byNormalForm.getOrDefault(generation.path(), generation.path());
                members.add(new ArchiveMember(path, generation.sequence(), state(generation), null, false));
            }
            history.problems()
                    .forEach(problem -> findings.add(new ArchiveFinding(
                            weight(problem.kind()), problem.kind().messageKey(), null, problem.arguments())));
        }
    }

    private static ArchiveMember.State state(MhlGeneration generation) {
        return switch (generation.state()) {
            case GOOD -> ArchiveMember.State.GOOD;
            case C4_DIFFERS -> ArchiveMember.State.DIFFERS;
            case NOT_IN_CHAIN -> ArchiveMember.State.NOT_LISTED;
            case UNREADABLE -> ArchiveMember.State.UNREADABLE;
            case MISSING -> ArchiveMember.State.MISSING;
        };
    }

    private static Weight weight(HistoryProblem.Kind kind) {
        return switch (kind) {
            case REFERENCE_C4_DIFFERS -> Weight.WRONG;
            case CHAIN_MISSING, CHAIN_UNREADABLE, LINK_INCOMPLETE, LINK_REPEATED, SEQUENCE_BROKEN, REFERENCE_MISSING ->
                Weight.INCOMPLETE;
            default -> Weight.REMARK;
        };
    }

    private void readBag(String base) throws IOException, ManifestException {
        Bag bag = new BagReader(archive, base).read();
        bag.manifests()
                .forEach((path, state) -> members.add(new ArchiveMember(path, null, state, base, bag.plainPercents())));
        findings.addAll(bag.findings());
    }

    private List<String> lists() throws IOException, ManifestException {
        List<String> lists = new ArrayList<>(folders.lists());
        for (String path : folders.texts()) {
            boolean list = archive.sizeBytes(path) <= MAX_TEXT_BYTES && archive.read(path, in -> isList(path, in));
            (list ? lists : others).add(path);
        }
        lists.sort(Comparator.naturalOrder());
        return lists;
    }

    /** That a first file is listed is enough; what is wrong further down is for the document's own reading to say. */
    private static boolean isList(String path, InputStream in) throws IOException {
        try {
            new ManifestReader().read(in, DocumentHints.named(path.substring(path.lastIndexOf('/') + 1)), entry -> {
                throw new Listed();
            });
            return false;
        } catch (Listed listed) {
            return true;
        } catch (ManifestException none) {
            return false;
        }
    }

    private static final class Listed extends IOException {
        private static final long serialVersionUID = 1;

        @Override
        public synchronized Throwable fillInStackTrace() {
            return this;
        }
    }
}

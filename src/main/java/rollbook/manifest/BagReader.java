package rollbook.manifest;

import java.io.IOException;
import java.io.InputStream;
import java.math.BigInteger;
import java.text.Normalizer;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.ArchiveMember.State;
import rollbook.manifest.ManifestArchive.Reading;

/**
 * Looks through a bag in an archive. Of the payload only names and sizes are looked at, where it is there at all; URLs of
 * {@code fetch.txt} are counted and never followed.
 */
final class BagReader {
    static final String DECLARATION = "bagit.txt";
    static final Pattern MANIFEST = Pattern.compile("manifest-([a-z0-9]+)\\.txt", Pattern.CASE_INSENSITIVE);

    private static final Pattern TAG_MANIFEST =
            Pattern.compile("tagmanifest-([a-z0-9]+)\\.txt", Pattern.CASE_INSENSITIVE);
    private static final Pattern FETCH = Pattern.compile("(\\S+)[ \\t]+(\\d{1,19}|-)[ \\t]+(.+)", Pattern.DOTALL);
    private static final Pattern OXUM = Pattern.compile("(\\d{1,30})\\.(\\d{1,18})");

    private final ManifestArchive archive;
    private final String base;
    /** In the archive, by their paths in the bag in Unicode form NFC. */
    private final Map<String, String> paths = new TreeMap<>();

    private final BagFindings findings = new BagFindings();
    private final BagPayload payload = new BagPayload();
    private final Map<String, State> manifests = new LinkedHashMap<>();
    private boolean coded = true;

    /** @param base the bag's folder, ended by a slash, or empty */
    BagReader(ManifestArchive archive, String base) {
        this.archive = archive;
        this.base = base;
        archive.paths().stream()
                .filter(path -> path.startsWith(base))
                .forEach(path ->
                        paths.put(Normalizer.normalize(path.substring(base.length()), Normalizer.Form.NFC), path));
    }

    Bag read() throws IOException, ManifestException {
        readDeclaration();
        for (String path : paths.keySet()) {
            if (MANIFEST.matcher(path).matches() && manifests.size() < BagPayload.MAX_MANIFESTS) {
                readManifest(path);
            }
        }
        int readable = readable();
        if (manifests.isEmpty()) {
            findings.add(BagFinding.NO_MANIFEST, "");
        } else if (coded && payload.notInEvery(readable) > 0) { // before 1.0 one manifest was enough
            findings.add(
                    BagFinding.NOT_IN_EVERY_MANIFEST,
                    payload.notInEvery(readable),
                    examples(path -> !payload.inEvery(path, readable)));
        }
        Set<String> toFetch = readFetch(readable);
        readTagManifests();
        comparePayload(readable, toFetch);
        Map<String, State> inArchive = new LinkedHashMap<>();
        manifests.forEach((path, state) -> inArchive.put(paths.get(path), state));
        return new Bag(base, inArchive, !coded, findings.all());
    }

    private int readable() {
        return (int) manifests.values().stream()
                .filter(state -> state != State.UNREADABLE)
                .count();
    }

    /** The worst that is known of a manifest counts. */
    private void worsen(String manifest, State state) {
        manifests.merge(manifest, state, (one, other) -> one.compareTo(other) > 0 ? one : other);
    }

    private <T> T read(String path, Reading<T> reading) throws IOException, ManifestException {
        return archive.read(Objects.requireNonNull(paths.get(path), path), reading);
    }

    private void readDeclaration() throws IOException, ManifestException {
        if (!paths.containsKey(DECLARATION)) {
            findings.add(BagFinding.DECLARATION_MISSING, base + DECLARATION);
            return;
        }
        BagDeclaration declaration = read(DECLARATION, BagDeclaration::read);
        if (declaration == null || !declaration.wellFormed()) {
            findings.add(BagFinding.DECLARATION_MALFORMED, base + DECLARATION);
        }
        if (declaration != null) {
            coded = declaration.codesPaths();
            if (!declaration.known()) {
                findings.add(BagFinding.VERSION_UNKNOWN, declaration.version());
            }
            if (!declaration.readable()) {
                findings.add(BagFinding.ENCODING_UNREADABLE, declaration.encoding());
            }
        }
    }

    private void readManifest(String path) throws IOException, ManifestException {
        int number = readable();
        manifests.put(path, State.GOOD);
        try {
            read(path, in -> readManifest(path, number, in));
        } catch (ManifestException e) {
            if (e.problem().ofArchive()) {
                throw e;
            }
            // A payload may be empty, and then so is its manifest.
            if (e.problem() != ManifestProblem.NOTHING_LISTED) {
                worsen(path, State.UNREADABLE);
                payload.forget(number);
                addUnreadable(path);
            }
        }
    }

    private void addUnreadable(String manifest) {
        String algorithm = manifest.substring(manifest.indexOf('-') + 1, manifest.lastIndexOf('.'));
        boolean known = ChecksumAlgorithm.ofTag(algorithm) != null;
        findings.add(known ? BagFinding.MANIFEST_UNREADABLE : BagFinding.ALGORITHM_UNKNOWN, base + manifest);
    }

    private ManifestHeader readManifest(String path, int number, InputStream in) throws IOException, ManifestException {
        BagManifestReader reader = BagManifestReader.ofPayload(in, DocumentHints.named(path), coded);
        ManifestHeader header = reader.read(entry -> {
            if (!payload.add(number, entry.path())) {
                findings.add(BagFinding.LISTED_TWICE, base + BagPath.PAYLOAD + entry.path());
            }
        });
        addHabits(path, reader);
        return header;
    }

    private void addHabits(String path, BagManifestReader reader) {
        if (reader.asterisks() > 0) {
            findings.add(BagFinding.ASTERISK, reader.asterisks(), List.of(base + path));
        }
        if (reader.barePercents() > 0) {
            findings.add(BagFinding.PERCENT_NOT_CODED, reader.barePercents(), List.of(base + path));
        }
    }

    /** Names of files in the manifests to which something applies; by reading them again. */
    private List<String> examples(Predicate<String> wanted) throws IOException, ManifestException {
        Set<String> examples = new TreeSet<>();
        for (String path : manifests.keySet()) {
            if (manifests.get(path) != State.UNREADABLE) {
                read(
                        path,
                        in -> BagManifestReader.ofPayload(in, DocumentHints.named(path), coded)
                                .read(entry -> {
                                    if (examples.size() < 6 && wanted.test(entry.path())) {
                                        examples.add(base + BagPath.PAYLOAD + entry.path());
                                    }
                                }));
            }
        }
        return List.copyOf(examples);
    }

    private Set<String> readFetch(int readable) throws IOException, ManifestException {
        Set<String> toFetch = new HashSet<>();
        if (!paths.containsKey("fetch.txt")) {
            return toFetch;
        }
        read("fetch.txt", in -> {
            LineReader lines = new LineReader(new BagLines(in));
            for (String line = lines.next(); line != null; line = lines.next()) {
                Matcher parts = FETCH.matcher(line);
                String path = parts.matches() ? payloadPath(parts.group(3), lines.lineNumber()) : null;
                if (path == null) {
                    findings.add(BagFinding.FETCH_MALFORMED, line);
                } else {
                    toFetch.add(path);
                    findings.add(BagFinding.FETCH, base + BagPath.PAYLOAD + path);
                    if (coded ? !payload.inEvery(path, readable) : !payload.lists(path)) {
                        findings.add(BagFinding.FETCH_UNLISTED, base + BagPath.PAYLOAD + path);
                    }
                }
            }
            return toFetch;
        });
        return toFetch;
    }

    private @Nullable String payloadPath(String listed, long line) {
        try {
            String path = ListedPath.of(coded ? BagPath.decoded(listed) : listed, line, 1);
            return path.startsWith(BagPath.PAYLOAD) ? path.substring(BagPath.PAYLOAD.length()) : null;
        } catch (ManifestException e) {
            return null;
        }
    }

    private void readTagManifests() throws IOException, ManifestException {
        int count = 0;
        boolean good = true;
        for (String path : paths.keySet()) {
            if (TAG_MANIFEST.matcher(path).matches()) {
                count++;
                good &= readTagManifest(path);
            }
        }
        if (count == 0) {
            findings.add(BagFinding.NO_TAG_MANIFEST, "");
        } else if (good) {
            findings.add(BagFinding.TAG_FILES_VALID, count, List.of());
        }
    }

    private boolean readTagManifest(String path) throws IOException, ManifestException {
        Map<String, Checksum> listed = new LinkedHashMap<>();
        try {
            read(path, in -> {
                BagManifestReader reader = BagManifestReader.ofTagFiles(in, DocumentHints.named(path), coded);
                ManifestHeader header = reader.read(
                        entry -> listed.put(entry.path(), entry.checksums().get(0)));
                addHabits(path, reader);
                return header;
            });
        } catch (ManifestException e) {
            if (e.problem().ofArchive()) {
                throw e;
            }
            addUnreadable(path);
            return false;
        }
        for (String manifest : manifests.keySet()) {
            if (!listed.containsKey(manifest)) {
                findings.add(BagFinding.MANIFEST_NOT_IN_TAGS, base + manifest);
                worsen(manifest, State.NOT_LISTED);
            }
        }
        boolean good = true;
        for (Map.Entry<String, Checksum> tag : listed.entrySet()) {
            good &= checkTagFile(tag.getKey(), tag.getValue());
        }
        return good;
    }

    private boolean checkTagFile(String path, Checksum expected) throws IOException, ManifestException {
        if (!paths.containsKey(path)) {
            findings.add(BagFinding.TAG_FILE_MISSING, base + path);
            return false;
        }
        Checksum found = read(path, in -> digest(expected.algorithm(), in));
        if (found.equals(expected)) {
            return true;
        }
        findings.add(BagFinding.TAG_FILE_DIFFERS, base + path);
        if (manifests.containsKey(path)) {
            worsen(path, State.DIFFERS);
        }
        return false;
    }

    private static Checksum digest(ChecksumAlgorithm algorithm, InputStream in) throws IOException {
        Digester digester = algorithm.digester();
        byte[] buffer = new byte[8_192];
        for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
            digester.update(buffer, 0, read);
        }
        return Checksum.of(algorithm, digester.digest());
    }

    private void comparePayload(int readable, Set<String> toFetch) throws IOException, ManifestException {
        Set<String> there = new HashSet<>();
        BigInteger octets = BigInteger.ZERO;
        for (String path : paths.keySet()) {
            if (path.startsWith(BagPath.PAYLOAD)) {
                String name = path.substring(BagPath.PAYLOAD.length());
                there.add(name);
                octets = octets.add(BigInteger.valueOf(archive.sizeBytes(paths.get(path))));
                if (readable > 0 && !payload.lists(name)) {
                    findings.add(BagFinding.PAYLOAD_UNLISTED, base + path);
                }
            }
        }
        boolean whole = false;
        if (there.isEmpty()) {
            findings.add(BagFinding.PAYLOAD_ELSEWHERE, payload.files(), List.of());
        } else {
            long found = there.stream().filter(payload::lists).count();
            long awaited = toFetch.stream()
                    .filter(path -> payload.lists(path) && !there.contains(path))
                    .count();
            long missing = payload.files() - found - awaited;
            whole = missing == 0 && awaited == 0;
            if (missing > 0) {
                findings.add(
                        BagFinding.PAYLOAD_MISSING,
                        missing,
                        examples(path -> !there.contains(path) && !toFetch.contains(path)));
            }
        }
        readInfo(whole ? octets : null, readable > 0);
    }

    /** @param octets of the payload, or null where not all of it is in the archive */
    private void readInfo(@Nullable BigInteger octets, boolean listed) throws IOException, ManifestException {
        BagInfo info = paths.containsKey("bag-info.txt") ? read("bag-info.txt", BagReader::info) : BagInfo.NONE;
        if (info.malformed() > 0) {
            findings.add(BagFinding.INFO_MALFORMED, info.malformed(), List.of());
        }
        info.lines().forEach(findings::addInfo);
        List<String> oxums = info.oxums();
        if (oxums.size() > 1) {
            findings.add(BagFinding.SIZE_REPEATED, String.join(", ", oxums));
        }
        for (String oxum : oxums) {
            Matcher parts = OXUM.matcher(oxum);
            if (!parts.matches()) {
                findings.add(BagFinding.SIZE_MALFORMED, oxum);
            } else if (listed && Long.parseLong(parts.group(2)) != payload.files()
                    || octets != null && !new BigInteger(parts.group(1)).equals(octets)) {
                findings.add(BagFinding.SIZE_DIFFERS, oxum);
            }
        }
    }

    private static BagInfo info(InputStream in) throws IOException {
        try {
            return BagInfo.read(in);
        } catch (ManifestException e) {
            return new BagInfo(List.of(), 1);
        }
    }
}

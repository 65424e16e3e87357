package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static rollbook.manifest.ChecksumAlgorithm.MD5;
import static rollbook.manifest.Manifests.digest;
import static rollbook.manifest.Manifests.file;
import static rollbook.manifest.Manifests.md5;

import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rollbook.manifest.ManifestEntry.Action;

class FileListingTests {
    private static final String[] FOLDERS = {"", "A001/", "A001/Clips/", "A001/Ü/", "B001/", "B001/A001/"};
    private static final String[] NAMES = {"a", "A001C001.000", "f?", "é", "\uD83C\uDFAC.mov", "a b", "x".repeat(40)};

    @Test
    void entriesComeBackAsTheyWereAdded() throws IOException {
        for (long seed = 1; seed <= 200; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            PackedEntries packed = new PackedEntries();
            List<ManifestEntry> entries = new ArrayList<>();
            for (int i = random.nextInt(100); i > 0; i--) {
                entries.add(anyEntry(random));
            }
            entries.forEach(packed::add);

            List<ManifestEntry> back = new ArrayList<>();
            packed.forEach(back::add);

            assertThat(back).as("seed %d", seed).isEqualTo(entries);
            assertThat(assumptions(back)).as("seed %d", seed).isEqualTo(assumptions(entries));
        }
    }

    @Test
    void eachEntryIsFoundInAnyOrderWhileOthersAreAdded() {
        SplittableRandom random = new SplittableRandom(7);
        PackedEntries packed = new PackedEntries();
        PackedEntries.Cursor cursor = packed.cursor();
        List<ManifestEntry> entries = new ArrayList<>();
        for (int i = 0; i < 2_000; i++) {
            ManifestEntry entry = anyEntry(random);
            entries.add(entry);
            packed.add(entry);
            int position = random.nextInt(entries.size());
            cursor.moveTo(position);
            assertThat(cursor.entry(0)).isEqualTo(entries.get(position));
        }
    }

    @Test
    void aFrameSequenceTakesLittleMoreThanItsDigests() {
        PackedEntries packed = new PackedEntries();
        SplittableRandom random = new SplittableRandom(1);
        for (int i = 0; i < 100_000; i++) {
            byte[] digest = new byte[MD5.digestBytes()];
            random.nextBytes(digest);
            packed.add(
                    file("A014/Clips/A014C003/A014C003.%07d.dng".formatted(i), 12_000_000L, Checksum.of(MD5, digest)));
        }

        assertThat(packed.bytes() / packed.size()).isLessThan(30);
    }

    /** Java would write a question mark, which is another file's name. */
    @Test
    void halfALetterIsRefused() {
        PackedEntries packed = new PackedEntries();

        assertThatIllegalArgumentException().isThrownBy(() -> packed.add(md5("a\uD83C", 1)));
        packed.add(md5("a?", 1));
    }

    /** Against a plain map: merged where the lines agree, kept apart where they don't. */
    @Test
    void isWhatAPlainMapWouldBe() {
        for (long seed = 1; seed <= 300; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            FileListing listing = new FileListing();
            Map<String, ManifestEntry> files = new LinkedHashMap<>();
            Map<String, ManifestEntry> contradictions = new LinkedHashMap<>();
            for (int i = random.nextInt(60); i > 0; i--) {
                ManifestEntry entry = anyEntry(random);
                listing.add(entry);
                addPlainly(entry, files, contradictions);
            }

            check(seed, listing, files, contradictions);
        }
    }

    @Test
    void aPartIsWhatOneBuiltFromItsOwnEntriesWouldBe() throws IOException {
        for (long seed = 1; seed <= 300; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            PackedEntries document = new PackedEntries();
            for (int i = random.nextInt(60); i > 0; i--) {
                document.add(anyEntry(random));
            }
            String folder = List.of("", "A001", "B001", "B001/A001").get(random.nextInt(4));
            List<String> others =
                    new ArrayList<>(random.nextBoolean() ? List.of() : List.of("B001/A001", "A001/Clips", "C001"));
            others.remove(folder);

            FileListing part = FileListing.of(document, new PartFilter(folder, others));

            Map<String, ManifestEntry> files = new LinkedHashMap<>();
            Map<String, ManifestEntry> contradictions = new LinkedHashMap<>();
            String start = folder.isEmpty() ? "" : folder + "/";
            document.forEach(entry -> {
                boolean inner = others.stream()
                        .anyMatch(other ->
                                (other + "/").startsWith(start) && entry.path().startsWith(other + "/"));
                if (entry.path().startsWith(start) && !inner) {
                    addPlainly(entry.within(folder), files, contradictions);
                }
            });
            check(seed, part, files, contradictions);
        }
    }

    @Test
    void anEarlierPathIsSeenFromTheSameFolder() {
        ManifestEntry renamed = new ManifestEntry("A001/b", null, List.of(), Action.NONE, 1, "A001/a", null);
        ManifestEntry broughtIn = new ManifestEntry("A001/b", null, List.of(), Action.NONE, 1, "x/a", null);

        assertThat(renamed.within("A001").previousPath()).isEqualTo("a");
        assertThat(broughtIn.within("A001").previousPath()).isEqualTo("x/a");
    }

    private static void check(
            long seed,
            FileListing listing,
            Map<String, ManifestEntry> files,
            Map<String, ManifestEntry> contradictions) {
        assertThat(listing.size()).as("seed %d", seed).isEqualTo(files.size());
        assertThat(listing.entries()).as("seed %d", seed).containsExactlyInAnyOrderElementsOf(files.values());
        FileListing.Reader reader = listing.reader();
        for (int at = listing.next(0); at >= 0; at = listing.next(at + 1)) {
            ManifestEntry second = contradictions.get(reader.at(at).entry().path());
            assertThat(listing.isContradicted(at)).as("seed %d", seed).isEqualTo(second != null);
            if (second != null) {
                assertThat(listing.contradiction(at)).as("seed %d", seed).isEqualTo(second);
            }
        }
        assertThat(listing.hasChecksums())
                .as("seed %d", seed)
                .isEqualTo(files.values().stream()
                        .anyMatch(entry -> !entry.checksums().isEmpty()));
    }

    private static void addPlainly(
            ManifestEntry entry, Map<String, ManifestEntry> files, Map<String, ManifestEntry> contradictions) {
        ManifestEntry earlier = files.putIfAbsent(entry.path(), entry);
        if (earlier == null) {
            return;
        }
        boolean contradicts = FileListing.sizesDiffer(earlier, entry)
                || Agreement.of(earlier.checksums(), entry.checksums()) == Agreement.DIFFERENT;
        if (contradicts) {
            contradictions.putIfAbsent(entry.path(), entry);
            return;
        }
        List<Checksum> checksums = new ArrayList<>(earlier.checksums());
        entry.checksums().stream().filter(one -> !checksums.contains(one)).forEach(checksums::add);
        files.put(
                entry.path(),
                new ManifestEntry(
                        entry.path(),
                        earlier.sizeBytes() == null ? entry.sizeBytes() : earlier.sizeBytes(),
                        checksums,
                        earlier.action().compareTo(entry.action()) >= 0 ? earlier.action() : entry.action(),
                        0,
                        earlier.previousPath() == null ? entry.previousPath() : earlier.previousPath(),
                        null));
    }

    private static ManifestEntry anyEntry(SplittableRandom random) {
        ChecksumAlgorithm[] algorithms = ChecksumAlgorithm.values();
        List<Checksum> checksums = new ArrayList<>();
        for (int i = random.nextInt(10) == 0 ? 20 : random.nextInt(3); i > 0; i--) {
            ChecksumAlgorithm algorithm = algorithms[random.nextInt(algorithms.length)];
            Checksum checksum = digest(algorithm, random.nextInt(2));
            checksums.add(random.nextBoolean() ? checksum : Checksum.assumed(algorithm, checksum.digest()));
        }
        Long size = random.nextBoolean() ? null : random.nextInt(3) == 0 ? Long.MAX_VALUE : random.nextLong(3);
        Action action = Action.values()[random.nextInt(Action.values().length)];
        return new ManifestEntry(path(random), size, checksums, action, 0, previousPath(random), (Instant) null);
    }

    private static @Nullable String previousPath(SplittableRandom random) {
        return random.nextInt(4) == 0 ? path(random) : null;
    }

    private static String path(SplittableRandom random) {
        return FOLDERS[random.nextInt(FOLDERS.length)] + NAMES[random.nextInt(NAMES.length)];
    }

    private static List<Boolean> assumptions(List<ManifestEntry> entries) {
        return entries.stream()
                .flatMap(entry -> entry.checksums().stream())
                .map(Checksum::assumed)
                .toList();
    }
}

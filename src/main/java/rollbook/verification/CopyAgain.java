package rollbook.verification;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import rollbook.manifest.Checksum;
import rollbook.manifest.ChecksumAlgorithm;
import rollbook.manifest.ManifestEntry;
import rollbook.manifest.ManifestWriter;
import rollbook.verification.Verdicts.Difference;

/** The files of a copy that must be copied again, as lists for copying and for checking what was copied. */
final class CopyAgain {
    private final List<String> paths = new ArrayList<>();
    private final Map<ChecksumAlgorithm, List<ManifestEntry>> byAlgorithm = new EnumMap<>(ChecksumAlgorithm.class);

    CopyAgain(List<Difference> differences) {
        for (Difference difference : differences) {
            if (GoodVersions.isToCopyAgain(difference)) {
                paths.add(difference.path());
                List<Checksum> expected = checksums(difference.expected());
                for (Checksum checksum : expected) {
                    byAlgorithm
                            .computeIfAbsent(checksum.algorithm(), algorithm -> new ArrayList<>())
                            .add(new ManifestEntry(difference.path(), null, expected, ManifestEntry.Action.NONE, 0));
                }
            }
        }
    }

    int files() {
        return paths.size();
    }

    /** For how many of the files the reference has a digest of each algorithm. */
    Map<ChecksumAlgorithm, Integer> algorithms() {
        Map<ChecksumAlgorithm, Integer> files = new EnumMap<>(ChecksumAlgorithm.class);
        byAlgorithm.forEach((algorithm, entries) -> files.put(algorithm, entries.size()));
        return files;
    }

    /** The paths, relative to the roll's folder, each followed by that character. */
    byte[] paths(char end) {
        StringBuilder list = new StringBuilder();
        paths.forEach(path -> list.append(path).append(end));
        return list.toString().getBytes(StandardCharsets.UTF_8);
    }

    /** A checksum list, GNU style, with the digests that the reference has. */
    byte[] checksums(ChecksumAlgorithm algorithm) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ManifestWriter writer = ManifestWriter.gnuList(out, algorithm)) {
            for (ManifestEntry entry : byAlgorithm.getOrDefault(algorithm, List.of())) {
                writer.write(entry);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    /** Reads what stands on record of a file: its size if known, then its digests with their algorithms. */
    private static List<Checksum> checksums(String facts) {
        String digests = facts.substring(facts.indexOf(" B  ") < 0 ? 0 : facts.indexOf(" B  ") + " B  ".length());
        List<Checksum> checksums = new ArrayList<>();
        for (String digest : digests.split(", ")) {
            for (ChecksumAlgorithm algorithm : ChecksumAlgorithm.values()) {
                if (digest.startsWith(algorithm.label() + " ")) {
                    checksums.add(Checksum.parse(
                            algorithm, digest.substring(algorithm.label().length() + 1)));
                }
            }
        }
        return checksums;
    }
}

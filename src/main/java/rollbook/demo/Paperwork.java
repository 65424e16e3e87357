package rollbook.demo;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.function.UnaryOperator;
import rollbook.demo.ScriptedRoll.Clip;
import rollbook.manifest.Checksum;
import rollbook.manifest.ChecksumAlgorithm;
import rollbook.manifest.ManifestEntry;
import rollbook.manifest.ManifestEntry.Action;
import rollbook.manifest.ManifestHeader.Process;
import rollbook.manifest.ManifestWriter;
import rollbook.manifest.MhlCreator;

/**
 * Writes the documents that the demo uploads: one folder per roll, in a folder of the medium and the day. The formats
 * differ from medium to medium.
 */
final class Paperwork {
    private Paperwork() {}

    /** A document as it is sent: its name, and its bytes. */
    record Sheet(String fileName, byte[] bytes) {
        InputStream open() {
            return new ByteArrayInputStream(bytes);
        }
    }

    /** What the list of a roll's clips looks like on some medium, if not like that of the card. */
    interface Flaw extends UnaryOperator<List<Clip>> {
        Flaw NONE = clips -> clips;

        /** The first so many clips have other bytes than on the card. */
        static Flaw otherBytes(int count) {
            return clips -> clips.stream()
                    .map(clip -> clips.indexOf(clip) < count ? damaged(clip) : clip)
                    .toList();
        }

        /** The last so many clips aren't there. */
        static Flaw missing(int count) {
            return clips -> clips.subList(0, clips.size() - count);
        }

        private static Clip damaged(Clip clip) {
            return new Clip(
                    clip.name(),
                    clip.sizeBytes(),
                    clip.checksums().stream()
                            .map(checksum -> {
                                byte[] other = checksum.digest();
                                other[0] ^= 0x55;
                                return Checksum.of(checksum.algorithm(), other);
                            })
                            .toList());
        }
    }

    /** A roll as some medium has it. */
    record Listed(ScriptedRoll roll, Flaw flaw) {
        static List<Listed> sound(List<ScriptedRoll> rolls) {
            return rolls.stream().map(roll -> new Listed(roll, Flaw.NONE)).toList();
        }
    }

    static Sheet gnuMd5(String name, List<Listed> rolls) {
        return sheet(name + ".md5", rolls, Action.NONE, out -> ManifestWriter.gnuList(out, ChecksumAlgorithm.MD5));
    }

    /** Two lines for each file, so that it can be compared with whatever the copies were hashed with. */
    static Sheet bsd(String name, List<Listed> rolls) {
        return sheet(name + ".sums", rolls, Action.NONE, ManifestWriter::bsdList);
    }

    /** An ASC MHL hash list made of the files where they lie, read again and compared. */
    static Sheet mhlInPlace(String name, Instant created, String host, List<Listed> rolls) {
        return mhl(name, created, host, Process.IN_PLACE, Action.VERIFIED, rolls);
    }

    /** An ASC MHL hash list that repeats what the source's files had when they were copied. */
    static Sheet mhlTransfer(String name, Instant created, String host, List<Listed> rolls) {
        return mhl(name, created, host, Process.TRANSFER, Action.ORIGINAL, rolls);
    }

    /** A list whose writing broke off in a digest, so that it can't be read. */
    static Sheet brokenOff(String name, List<Listed> rolls) {
        String whole = new String(gnuMd5(name, rolls).bytes(), StandardCharsets.UTF_8);
        String[] lines = whole.split("\n");
        int last = lines.length / 2;
        String rest = String.join("\n", List.of(lines).subList(0, last));
        return new Sheet(
                name + ".md5",
                (rest + "\n" + lines[last].substring(0, 19) + lines[last].substring(32) + "\n")
                        .getBytes(StandardCharsets.UTF_8));
    }

    private static Sheet mhl(
            String name, Instant created, String host, Process process, Action action, List<Listed> rolls) {
        MhlCreator creator = new MhlCreator(created, host, "copy station script", "1.0", null, process);
        return sheet(name + ".mhl", rolls, action, out -> ManifestWriter.ascMhl(out, creator));
    }

    private interface Opening {
        ManifestWriter over(ByteArrayOutputStream out) throws IOException;
    }

    private static Sheet sheet(String fileName, List<Listed> rolls, Action action, Opening opening) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        String root = fileName.substring(0, fileName.lastIndexOf('.'));
        try (ManifestWriter writer = opening.over(out)) {
            for (Listed listed : rolls) {
                for (Clip clip : listed.flaw().apply(listed.roll().clips())) {
                    String path = root + "/" + listed.roll().code() + "/" + clip.name();
                    writer.write(new ManifestEntry(path, clip.sizeBytes(), clip.checksums(), action, 1));
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException("Writing to memory doesn't fail", e);
        }
        return new Sheet(fileName, out.toByteArray());
    }
}

package rollbook.bench;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.HexFormat;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Makes the documents that are measured: the frames of one roll, some 25 MB each, in clips of different lengths. The
 * digests are random, as digests are: nothing can be saved on them.
 */
final class Documents {
    private static final HexFormat HEX = HexFormat.of();
    private static final Instant START = Instant.parse("2026-03-04T07:12:31Z");
    private static final int FRAMES_PER_SECOND = 24;
    private static final int FILES_READ_PER_SECOND = 21;
    private static final long FRAME_BYTES = 25_190_400;

    /** What a document is made for: it names the medium, and a copy's hash list says that it was read back. */
    enum Medium {
        CARD,
        DRIVE
    }

    private Documents() {}

    /**
     * @param format {@code gnu} in the order of the names, {@code gnu-unordered} as tools list them that take a folder's
     *     files as the file system hands them out, or {@code mhl}
     */
    static Path name(Path folder, String format, Medium medium, int files) {
        return folder.resolve(
                format.equals("mhl")
                        ? "0001_" + medium + "-" + files + "_2026-03-04_190512Z.mhl"
                        : medium + "-" + files + format.substring("gnu".length()) + ".md5");
    }

    /** @return an unfinished name, so that a document that was broken off is not taken for a whole one */
    static Path make(Path folder, String format, Medium medium, int files, long seed) throws IOException {
        Path path = folder.resolve("unfinished");
        boolean unordered = format.equals("gnu-unordered");
        Frames frames = new Frames(seed, files, unordered ? new SplittableRandom(medium.ordinal()) : null);
        if (format.equals("mhl")) {
            mhl(path, medium, files, frames);
        } else {
            gnu(path, medium, files, frames);
        }
        return path;
    }

    private static void gnu(Path path, Medium medium, int files, Frames frames) throws IOException {
        try (BufferedWriter out = Files.newBufferedWriter(path, StandardCharsets.UTF_8)) {
            for (int i = 0; i < files; i++) {
                frames.next();
                out.write(frames.digest());
                out.write("  ");
                out.write(medium.toString());
                out.write('/');
                out.write(frames.path());
                out.write('\n');
            }
        }
    }

    private static void mhl(Path path, Medium medium, int files, Frames frames) throws IOException {
        boolean card = medium == Medium.CARD;
        try (BufferedWriter out = Files.newBufferedWriter(path, StandardCharsets.UTF_8)) {
            out.write("""
                    <?xml version="1.0" encoding="UTF-8"?>
                    <hashlist version="2.0" xmlns="urn:ASC:MHL:v2.0">
                      <creatorinfo>
                        <creationdate>2026-03-04T19:05:12+00:00</creationdate>
                        <hostname>%s</hostname>
                        <tool version="1.0">bench</tool>
                      </creatorinfo>
                      <processinfo>
                        <process>in-place</process>
                      </processinfo>
                      <hashes>
                    """.formatted(medium));
            for (int i = 0; i < files; i++) {
                frames.next();
                out.write("    <hash>\n      <path size=\"" + FRAME_BYTES + "\" lastmodificationdate=\""
                        + frames.written() + "\">");
                out.write(frames.path());
                out.write("</path>\n      <xxh128 action=\"" + (card ? "original" : "verified") + "\" hashdate=\""
                        + frames.read(card) + "\">");
                out.write(frames.digest());
                out.write("</xxh128>\n    </hash>\n");
            }
            out.write("  </hashes>\n</hashlist>\n");
        }
    }

    private static final class Frames {
        private final SplittableRandom random;
        private final @Nullable SplittableRandom order;
        private final long seed;
        private final int files;
        private final byte[] digest = new byte[16];
        private int[] frames = {};
        private int number = -1;
        private int clip;
        private int at;

        /** @param order shuffles the frames of a clip; null leaves them as they were recorded */
        Frames(long seed, int files, @Nullable SplittableRandom order) {
            this.files = files;
            this.random = new SplittableRandom(seed);
            this.order = order;
            this.seed = seed;
        }

        void next() {
            number++;
            at++;
            if (at >= frames.length) {
                nextClip();
            }
            new SplittableRandom(seed + ((long) clip << 32 | frames[at])).nextBytes(digest);
        }

        private void nextClip() {
            clip++;
            at = 0;
            int first = random.nextInt(FRAMES_PER_SECOND * 86_400);
            int length = Math.min(300 + random.nextInt(4_000), files - number);
            frames = IntStream.range(first, first + length).toArray();
            for (int i = frames.length - 1; order != null && i > 0; i--) {
                int other = order.nextInt(i + 1);
                int frame = frames[i];
                frames[i] = frames[other];
                frames[other] = frame;
            }
        }

        String path() {
            return "A014/A014C%03d_260304/A014C%03d_260304.%07d.dng".formatted(clip, clip, frames[at]);
        }

        String digest() {
            return HEX.formatHex(digest);
        }

        String written() {
            return time(START.plusSeconds(number / FRAMES_PER_SECOND));
        }

        String read(boolean card) {
            return time(START.plusSeconds(card ? 30_000 : 60_000).plusSeconds(number / FILES_READ_PER_SECOND));
        }

        private static String time(Instant instant) {
            return instant.toString().replace("Z", "+00:00");
        }
    }
}

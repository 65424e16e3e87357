package rollbook.manifest;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Consumer;

/**
 * Documents that somebody might send by mistake or on purpose: sound ones cut short, damaged, spliced and re-coded, and
 * ones made to lead a reader astray. The same seed gives the same documents.
 */
public final class HostileDocuments {
    private static final String[] VALUES = {
        "-1",
        "0",
        "99999999999999999999999999",
        "9223372036854775807",
        "9223372036854775808",
        "1e9",
        "NaN",
        "0x10",
        " ",
        "",
        "../../../etc/passwd",
        "..\\..\\boot.ini",
        "/etc/shadow",
        "C:\\Windows\\system.ini",
        "\\\\server\\share\\file",
        "\\\\?\\C:\\file",
        "~root/.ssh",
        "a/./b//c/",
        "a/../b",
        "CON",
        "nul.txt",
        "%00%2e%2e%2f",
        "\0",
        "\r",
        "\n",
        "\t",
        "\u202Efdp.exe",
        "\uFEFF",
        "zz",
        "0123456789abcdef",
        "c4",
        "&amp;",
        "&#0;",
        "&#x10FFFF;",
        "<![CDATA[x]]>",
        "<!--x-->",
        "2026-13-45T99:99:99Z",
        "verified",
        "failed",
        "sha256",
        "2.0"
    };

    private final SplittableRandom random;
    private final Consumer<Document> each;
    private final List<Document> sound;

    private HostileDocuments(long seed, Consumer<Document> each) {
        this.random = new SplittableRandom(seed);
        this.each = each;
        this.sound = SoundDocuments.all(random);
    }

    /** @param origin the sound document that it was made from, or itself where there is none */
    public record Document(String what, String fileName, byte[] bytes, byte[] origin) {
        Document(String what, String fileName, byte[] bytes) {
            this(what, fileName, bytes, bytes);
        }
    }

    /** Hands over at least twenty thousand documents, one after the other. */
    public static void forEach(long seed, Consumer<Document> each) {
        HostileDocuments documents = new HostileDocuments(seed, each);
        documents.cut();
        documents.damage();
        documents.replaceTokens();
        documents.repeatAndDropLines();
        documents.recode();
        documents.splice();
        HostileXml.forEach(each);
        HostileLists.forEach(each);
        HostileZips.forEach(documents.random, each);
    }

    private void cut() {
        for (Document document : sound) {
            int step = Math.max(1, document.bytes().length / 900);
            for (int length = 0; length < document.bytes().length; length += step) {
                give("cut at " + length, document, Arrays.copyOf(document.bytes(), length));
            }
        }
    }

    private void damage() {
        for (Document document : sound) {
            for (int i = 0; i < 700; i++) {
                byte[] damaged = document.bytes().clone();
                for (int flips = 1 + random.nextInt(6); flips > 0; flips--) {
                    damaged[random.nextInt(damaged.length)] = (byte)
                            (random.nextBoolean()
                                    ? random.nextInt(256)
                                    : "<>&\"'\0\n\r\\/(=".charAt(random.nextInt(12)));
                }
                give("damaged " + i, document, damaged);
            }
        }
    }

    /** A word of the document gives way to a value that it shouldn't have. */
    private void replaceTokens() {
        for (Document document : sound) {
            String text = new String(document.bytes(), StandardCharsets.ISO_8859_1);
            for (int i = 0; i < 500; i++) {
                int from = random.nextInt(text.length());
                int to = from;
                while (to < text.length() && Character.isLetterOrDigit(text.charAt(to))) {
                    to++;
                }
                String value = VALUES[random.nextInt(VALUES.length)];
                byte[] inserted = value.getBytes(StandardCharsets.UTF_8);
                give(
                        "token " + i + " " + value,
                        document,
                        join(
                                Arrays.copyOf(document.bytes(), from),
                                inserted,
                                Arrays.copyOfRange(document.bytes(), to, document.bytes().length)));
            }
        }
    }

    private void repeatAndDropLines() {
        for (Document document : sound) {
            List<String> lines = new String(document.bytes(), StandardCharsets.ISO_8859_1)
                    .lines()
                    .toList();
            for (int i = 0; i < 120; i++) {
                List<String> changed = new ArrayList<>(lines);
                for (int times = 1 + random.nextInt(3); times > 0 && !changed.isEmpty(); times--) {
                    int at = random.nextInt(changed.size());
                    switch (random.nextInt(3)) {
                        case 0 -> changed.add(at, changed.get(random.nextInt(changed.size())));
                        case 1 -> changed.remove(at);
                        default -> changed.add(at, changed.remove(random.nextInt(changed.size())));
                    }
                }
                String end = List.of("\n", "\r\n", "\r", "\n\r", "\0").get(random.nextInt(5));
                give("lines " + i, document, String.join(end, changed).getBytes(StandardCharsets.ISO_8859_1));
            }
        }
    }

    private void recode() {
        for (Document document : sound) {
            String text = new String(document.bytes(), StandardCharsets.UTF_8);
            for (String name :
                    List.of("UTF-16LE", "UTF-16BE", "UTF-16", "UTF-32", "ISO-8859-1", "IBM500", "Shift_JIS", "UTF-7")) {
                if (Charset.isSupported(name)) {
                    give("in " + name, document, text.getBytes(Charset.forName(name)));
                }
            }
            byte[][] marks = {{(byte) 0xEF, (byte) 0xBB, (byte) 0xBF}, {(byte) 0xFF, (byte) 0xFE}, {0, 0, (byte) 0xFE}};
            for (byte[] mark : marks) {
                give("with a mark of " + mark.length, document, join(mark, document.bytes()));
                give("with two marks", document, join(mark, mark, document.bytes()));
            }
            for (String sequence :
                    List.of("\u00C0\u00AF", "\u00ED\u00A0\u0080", "\u00F4\u0090\u0080\u0080", "\u00FF")) {
                int at = random.nextInt(document.bytes().length);
                give(
                        "with bytes that are no UTF-8",
                        document,
                        join(
                                Arrays.copyOf(document.bytes(), at),
                                sequence.getBytes(StandardCharsets.ISO_8859_1),
                                Arrays.copyOfRange(document.bytes(), at, document.bytes().length)));
            }
        }
    }

    private void splice() {
        for (int i = 0; i < 1_500; i++) {
            Document one = sound.get(random.nextInt(sound.size()));
            Document other = sound.get(random.nextInt(sound.size()));
            byte[] head = Arrays.copyOf(one.bytes(), random.nextInt(one.bytes().length));
            byte[] tail = Arrays.copyOfRange(other.bytes(), random.nextInt(other.bytes().length), other.bytes().length);
            give("spliced " + i, one, join(head, tail));
        }
    }

    private void give(String what, Document from, byte[] bytes) {
        each.accept(new Document(from.what() + ", " + what, from.fileName(), bytes, from.bytes()));
    }

    static byte[] join(byte[]... pieces) {
        ByteArrayOutputStream whole = new ByteArrayOutputStream();
        for (byte[] piece : pieces) {
            try {
                whole.write(piece);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return whole.toByteArray();
    }
}

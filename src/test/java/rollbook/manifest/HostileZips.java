package rollbook.manifest;

import static rollbook.manifest.SoundDocuments.ascii;
import static rollbook.manifest.SoundDocuments.zip;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import rollbook.manifest.HostileDocuments.Document;

/** Archives that unpack to more than they are, to somewhere else, or to something else than they say. */
final class HostileZips {
    private static final byte[] LIST = ascii(Manifests.ABC_MD5 + "  A001/a.mxf\n");
    private static final int LOCAL = 0x04034b50;
    private static final int CENTRAL = 0x02014b50;
    private static final int END = 0x06054b50;

    private HostileZips() {}

    static void forEach(SplittableRandom random, Consumer<Document> each) {
        for (String name : new String[] {
            "../../evil.md5",
            "/etc/evil.md5",
            "C:/evil.md5",
            "..\\evil.md5",
            "\\\\server\\evil.md5",
            "a/../../evil.md5",
            "~/evil.md5",
            "a\0b.md5",
            "",
            "/",
            "a//b.md5",
            "./a.md5",
            "x".repeat(60_000) + ".md5"
        }) {
            give(each, "name " + (name.length() > 40 ? "without end" : name), zip(Map.of(name, LIST)));
        }
        give(each, "a bomb", zip(Map.of("card.md5", new byte[300_000_000])));
        give(each, "a bomb of lists", zip(Map.of("card.md5", ascii((Manifests.ABC_MD5 + "  a\n").repeat(1_000_000)))));
        Map<String, byte[]> many = new LinkedHashMap<>();
        for (int i = 0; i < 30_000; i++) {
            many.put("l" + i + ".md5", LIST);
        }
        give(each, "thirty thousand lists", zip(many));
        give(each, "a zip in a zip in a zip", zip(Map.of("a.zip", zip(Map.of("b.zip", zip(Map.of("c.md5", LIST)))))));
        give(each, "nothing", zip(Map.of()));
        give(each, "media only", zip(Map.of("A001C001.mxf", new byte[1_000])));
        byte[] sound = zip(new LinkedHashMap<>(Map.of("card.md5", LIST, "ascmhl/ascmhl_chain.xml", LIST)));
        fields(sound, random, each);
    }

    /** Every number of every header gets a value that lies. */
    private static void fields(byte[] sound, SplittableRandom random, Consumer<Document> each) {
        long[] values = {0, 1, 0x7FFF, 0xFFFF, 0x7FFFFFFFL, 0xFFFFFFFFL, 0xFFFFFFFEL, random.nextInt() & 0xFFFFFFFFL};
        ByteBuffer bytes = ByteBuffer.wrap(sound).order(ByteOrder.LITTLE_ENDIAN);
        for (int at = 0; at + 4 <= sound.length; at++) {
            int signature = bytes.getInt(at);
            int length = signature == LOCAL ? 30 : signature == CENTRAL ? 46 : signature == END ? 22 : 0;
            for (int field = 4; field < length; field += 2) {
                for (long value : values) {
                    byte[] lying = sound.clone();
                    ByteBuffer changed = ByteBuffer.wrap(lying).order(ByteOrder.LITTLE_ENDIAN);
                    changed.putShort(at + field, (short) value);
                    give(each, "field " + field + " of " + Integer.toHexString(signature) + " is " + value, lying);
                    if (at + field + 4 <= lying.length) {
                        changed.putInt(at + field, (int) value);
                        give(each, "long field " + field + " of " + Integer.toHexString(signature), lying.clone());
                    }
                }
            }
        }
    }

    private static void give(Consumer<Document> each, String what, byte[] bytes) {
        each.accept(new Document("zip: " + what, "upload.zip", bytes));
    }
}

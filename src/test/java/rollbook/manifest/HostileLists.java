package rollbook.manifest;

import java.nio.charset.StandardCharsets;
import java.util.function.Consumer;
import rollbook.manifest.HostileDocuments.Document;

/** Lists and tables with endless lines, lying columns and names that lead elsewhere. */
final class HostileLists {
    private static final String MD5 = Manifests.ABC_MD5;

    private HostileLists() {}

    static void forEach(Consumer<Document> each) {
        give(each, "empty", "");
        give(each, "blank lines only", "\n".repeat(500_000));
        give(each, "comments only", "# nothing\n".repeat(200_000));
        give(each, "NULs only", "\0".repeat(500_000));
        give(each, "a line without end", "a".repeat(4_000_000));
        give(each, "a digest without end", "0".repeat(4_000_000) + "  a\n");
        give(each, "a name without end", MD5 + "  " + "a".repeat(4_000_000));
        give(each, "a name of a million folders", MD5 + "  " + "a/".repeat(1_000_000) + "b\n");
        give(each, "a name of a million dots", MD5 + "  " + "./".repeat(1_000_000) + "b\n");
        give(each, "a tag without end", "MD5 (" + "(".repeat(2_000_000) + ") = " + MD5 + "\n");
        give(each, "a tagged name with many endings", "MD5 (" + ") = ".repeat(500_000) + ") = " + MD5 + "\n");
        give(each, "escapes without end", "\\" + MD5 + "  " + "\\\\".repeat(1_000_000) + "\n");
        give(each, "an escape cut off", "\\" + MD5 + "  a\\");
        give(each, "combining marks without end", MD5 + "  a" + "\u0301".repeat(500_000) + "\n");
        give(each, "the same name a hundred thousand times", (MD5 + "  a\n").repeat(100_000));
        give(each, "contradictions", (MD5 + "  a\n" + Manifests.EMPTY_MD5 + "  a\n").repeat(50_000));
        give(each, "old CRC lines", "1234567890 12 a\n".repeat(1_000));
        give(each, "name first", "a.mxf " + MD5 + "\n");
        give(each, "a table without rows", "path,size,md5\n");
        give(each, "a table without a path", "size,md5\n1," + MD5 + "\n");
        give(each, "a table with a quote left open", "path,size,md5\n\"a,1," + MD5 + "\n".repeat(300_000));
        give(each, "a table with a hundred thousand columns", "path,md5" + ",x".repeat(100_000) + "\na," + MD5 + "\n");
        give(each, "a table with too many cells", "path,md5\na," + MD5 + ",".repeat(1_000_000) + "\n");
        give(each, "a table with two path columns", "path,path,md5\na,b," + MD5 + "\n");
        give(each, "a table with huge sizes", "path,size,md5\na,99999999999999999999," + MD5 + "\nb,-1," + MD5 + "\n");
        give(
                each,
                "sizes that add up past a long",
                "path,size,md5\na,9223372036854775807," + MD5 + "\nb,9223372036854775807," + MD5 + "\n");
        give(each, "base64 without end", "A".repeat(1_000_000) + "==  a\n");
        give(each, "a bag manifest that leads out", MD5 + "  data/../../etc/passwd\n");
        give(each, "a bag manifest with percents", MD5 + "  data/%".repeat(1) + "%0".repeat(300_000) + "\n");
        give(each, "a C4 ID past the largest", "c4" + "z".repeat(88) + "  a\n");
        for (int c = 0; c < 0x20; c++) {
            give(each, "control character " + c, MD5 + "  a" + (char) c + "b\n" + MD5 + "  c\n");
            give(each, "control character first " + c, (char) c + MD5 + "  a\n");
        }
    }

    private static void give(Consumer<Document> each, String what, String text) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        each.accept(new Document("list: " + what, "list.txt", bytes));
        each.accept(new Document("list named as table: " + what, "list.csv", bytes));
    }
}

package rollbook.manifest;

import java.util.SplittableRandom;

/** Names that file systems allow and lists stumble over, in normal form NFC, from a seed. */
final class NastyNames {
    private static final String[] PIECES = {
        "a",
        "B",
        "7",
        " ",
        "  ",
        "\\",
        "\\n",
        "(",
        ")",
        ") = ",
        "*",
        "#",
        ";",
        "'",
        "\"",
        "&",
        "<",
        ">",
        "]]>",
        "é",
        "日本",
        "\uD83C\uDFAC",
        ".",
        "_",
        "=",
        "%0A",
        "MD5 (",
        "C:",
        "~",
        "-",
        "\t",
        "&amp;",
        "..."
    };
    private static final String[] LIST_PIECES = {"\n", "\r", "\u0001", "\u001B"};

    private NastyNames() {}

    /** @param control with the control characters that XML can't hold */
    static String path(SplittableRandom random, boolean control) {
        StringBuilder path = new StringBuilder();
        int depth = 1 + random.nextInt(3);
        for (int d = 0; d < depth; d++) {
            path.append(d == 0 ? "" : "/").append('f').append(random.nextInt(1_000_000));
            for (int i = random.nextInt(6); i > 0; i--) {
                boolean fromLists = control && random.nextInt(6) == 0;
                String[] pieces = fromLists ? LIST_PIECES : PIECES;
                path.append(pieces[random.nextInt(pieces.length)]);
            }
        }
        return path.toString();
    }

    static Checksum checksum(SplittableRandom random, ChecksumAlgorithm algorithm) {
        byte[] digest = new byte[algorithm.digestBytes()];
        random.nextBytes(digest);
        return Checksum.of(algorithm, digest);
    }
}

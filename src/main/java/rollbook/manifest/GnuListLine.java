package rollbook.manifest;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Untagged lines: the digest, a blank, a blank or asterisk (text or binary), the name. The older reversed form has one
 * blank only. The first line of a document decides which; otherwise a name that starts with a blank could pass for
 * another (GNU coreutils manual, "cksum output modes").
 */
final class GnuListLine {
    /** What {@code cksum} and {@code sum} print: a number, another number, perhaps a name. */
    private static final Pattern CRC = Pattern.compile("\\d{1,10} +\\d+(?: .*)?", Pattern.DOTALL);

    private static final int CRC_DIGITS = 10;
    /** The other way round, with 32 bits in hexadecimal. */
    private static final Pattern NAME_FIRST = Pattern.compile(".*[ \\t][0-9A-Fa-f]{8}", Pattern.DOTALL);

    /** {@code shasum} knows two modes beside bytes, and prints a letter in the flag's place for them. */
    private static final String FLAGS_OF_OTHER_MODES = "U^";

    private static final boolean[] DIGEST_LETTERS = new boolean[128];

    static {
        for (char c = 0; c < DIGEST_LETTERS.length; c++) {
            boolean letter = c >= '0' && c <= '9' || c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z';
            DIGEST_LETTERS[c] = letter || "_+/=".indexOf(c) >= 0;
        }
    }

    private enum Form {
        UNKNOWN,
        WITH_FLAG,
        REVERSED
    }

    private Form form = Form.UNKNOWN;

    ListLine parse(String text, boolean escapes, long line) throws ManifestException {
        boolean escaped = escapes && text.startsWith("\\");
        int start = escaped ? 1 : 0;
        int end = start;
        while (end < text.length() && isDigest(text.charAt(end))) {
            end++;
        }
        if (end - start <= CRC_DIGITS && CRC.matcher(text).matches()) {
            throw new ManifestException(ManifestProblem.CRC_LIST, line, 1);
        }
        if (end == start || end >= text.length() || !isBlank(text.charAt(end))) {
            Matcher nameFirst = NAME_FIRST.matcher(text);
            throw nameFirst.matches()
                    ? new ManifestException(ManifestProblem.CRC_LIST, line, 1)
                    : new ManifestException(ManifestProblem.NOT_A_LIST_LINE, line, 1, text);
        }
        String digest = text.substring(start, end);
        int name = end + 1;
        boolean flagged = name + 1 < text.length() && (text.charAt(name) == ' ' || text.charAt(name) == '*');
        if (!flagged && form != Form.REVERSED && isOtherMode(digest, text, name)) {
            throw new ManifestException(ManifestProblem.NOT_OF_BYTES, line, name + 1, text.charAt(name));
        }
        if (form == Form.UNKNOWN) {
            form = flagged ? Form.WITH_FLAG : Form.REVERSED;
        }
        if (form == Form.WITH_FLAG && !flagged) {
            throw new ManifestException(ManifestProblem.MIXED_LISTS, line, name + 1);
        }
        name += form == Form.WITH_FLAG ? 1 : 0;
        return new ListLine(null, digest, start + 1, text.substring(name), name + 1, escaped);
    }

    /** Only SHA digests: with others, the letter begins the name in the reversed form. */
    private static boolean isOtherMode(String digest, String text, int flag) {
        boolean sha = digest.length() == ChecksumAlgorithm.SHA1.digestBytes() * 2
                || digest.length() == ChecksumAlgorithm.SHA256.digestBytes() * 2
                || digest.length() == ChecksumAlgorithm.SHA512.digestBytes() * 2;
        return sha && flag + 1 < text.length() && FLAGS_OF_OTHER_MODES.indexOf(text.charAt(flag)) >= 0;
    }

    private static boolean isDigest(char c) {
        return c < DIGEST_LETTERS.length && DIGEST_LETTERS[c];
    }

    private static boolean isBlank(char c) {
        return c == ' ' || c == '\t';
    }
}

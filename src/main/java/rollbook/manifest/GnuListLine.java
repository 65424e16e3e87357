package rollbook.manifest;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Untagged lines: the digest, a blank, a blank or asterisk (text or binary), the name. The older reversed form has one
 * blank only. The first line of a document decides which; otherwise a name that starts with a blank could pass for
 * another (GNU coreutils manual, "cksum output modes").
 */
final class GnuListLine {
    private static final Pattern DIGEST = Pattern.compile("[A-Za-z0-9_+/=]+");
    private static final Pattern CRC = Pattern.compile("\\d{1,10} \\d+ .*", Pattern.DOTALL);

    private enum Form {
        UNKNOWN,
        WITH_FLAG,
        REVERSED
    }

    private Form form = Form.UNKNOWN;

    ListLine parse(String text, long line) throws ManifestException {
        boolean escaped = text.charAt(0) == '\\';
        int start = escaped ? 1 : 0;
        Matcher digest = DIGEST.matcher(text).region(start, text.length());
        if (!digest.lookingAt() || !blankAt(text, digest.end())) {
            throw new ManifestException(ManifestProblem.NOT_A_LIST_LINE, line, 1, text);
        }
        int name = digest.end() + 1;
        if (digest.end() - start <= 10 && CRC.matcher(text).matches()) {
            throw new ManifestException(ManifestProblem.CRC_LIST, line, 1);
        }
        boolean flagged = name + 1 < text.length() && (text.charAt(name) == ' ' || text.charAt(name) == '*');
        if (form == Form.UNKNOWN) {
            form = flagged ? Form.WITH_FLAG : Form.REVERSED;
        }
        if (form == Form.WITH_FLAG && !flagged) {
            throw new ManifestException(ManifestProblem.MIXED_LISTS, line, name + 1);
        }
        name += form == Form.WITH_FLAG ? 1 : 0;
        return new ListLine(null, digest.group(), start + 1, text.substring(name), name + 1, escaped);
    }

    private static boolean blankAt(String text, int index) {
        return index < text.length() && (text.charAt(index) == ' ' || text.charAt(index) == '\t');
    }
}

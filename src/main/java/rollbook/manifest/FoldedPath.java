package rollbook.manifest;

import java.text.Normalizer;
import java.util.Locale;

/**
 * A path with everything removed in which file systems and copying programs spell one name differently: letter case,
 * the Unicode form, the separator, and what is put in the place of characters that a destination can't hold (an
 * underscore, or the character's number behind a percent sign). Two files whose folded paths are equal may still be two;
 * only their digests tell.
 */
final class FoldedPath {
    /** What file systems of one family refuse in names, besides controls and a blank or dot at a name's end. */
    private static final String REFUSED = "<>:\"|?*";

    private FoldedPath() {}

    static String of(String path) {
        StringBuilder folded = new StringBuilder(path.length());
        int nameStart = 0;
        for (int i = 0; i < path.length(); i++) {
            char c = path.charAt(i);
            int escaped = c == '%' ? escaped(path, i) : -1;
            if (escaped >= 0) {
                i += 2;
                c = (char) escaped;
            }
            if (c == '/' || c == '\\') {
                endName(folded, nameStart);
                folded.append('/');
                nameStart = folded.length();
            } else {
                folded.append(isRefused(c) ? '_' : c);
            }
        }
        endName(folded, nameStart);
        return sameCase(folded.toString());
    }

    /** A destination drops blanks and dots at a name's end, or writes underscores. */
    private static void endName(StringBuilder folded, int nameStart) {
        int end = folded.length();
        while (end > nameStart + 1 && " ._".indexOf(folded.charAt(end - 1)) >= 0) {
            end--;
        }
        folded.setLength(end);
    }

    private static boolean isRefused(char c) {
        return c < ' ' || c == 0x7F || REFUSED.indexOf(c) >= 0;
    }

    /** The refused character that two hexadecimal digits behind a percent sign stand for, or -1. */
    private static int escaped(String path, int percent) {
        if (percent + 2 >= path.length()) {
            return -1;
        }
        int high = Character.digit(path.charAt(percent + 1), 16);
        int low = Character.digit(path.charAt(percent + 2), 16);
        int value = high << 4 | low;
        boolean stands = high >= 0 && low >= 0 && (isRefused((char) value) || value == '\\' || value == '%');
        return stands ? value : -1;
    }

    /** Through upper case first, for some letters share only that; composed again, for case mappings may take apart. */
    private static String sameCase(String text) {
        String folded = text.toUpperCase(Locale.ROOT).toLowerCase(Locale.ROOT);
        return Normalizer.normalize(folded, Normalizer.Form.NFC);
    }
}

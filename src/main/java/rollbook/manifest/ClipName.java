package rollbook.manifest;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * The clip that a name speaks of: its roll (letters and digits that end in a digit), C, and the clip's number in three
 * to five digits, as in A014C003 or A014_C003_260301 (common practice, no source). Whatever stands around it is no part
 * of it, and neither is letter case.
 *
 * @param roll the roll's code as the name has it, in upper case
 * @param digits the number's digits as the name has them
 * @param end where the number ends in the name
 */
record ClipName(String roll, String digits, int end) {
    private static final int FEWEST_DIGITS = 3;
    private static final int MOST_DIGITS = 5;
    private static final int LONGEST_ROLL = 32;

    /** The last clip that the name mentions, or null. */
    static @Nullable ClipName in(String name) {
        for (int c = name.length() - FEWEST_DIGITS - 1; c > 1; c--) {
            if (name.charAt(c) == 'C' || name.charAt(c) == 'c') {
                int end = digitsEnd(name, c + 1);
                int digits = end - c - 1;
                int rollEnd = isSeparator(name.charAt(c - 1)) ? c - 1 : c;
                int rollStart = digits < FEWEST_DIGITS || digits > MOST_DIGITS ? rollEnd : rollStart(name, rollEnd);
                if (rollStart < rollEnd) {
                    String roll = name.substring(rollStart, rollEnd).toUpperCase(Locale.ROOT);
                    return new ClipName(roll, name.substring(c + 1, end), end);
                }
            }
        }
        return null;
    }

    int number() {
        return Integer.parseInt(digits);
    }

    /** The clip as people call it: A014C003. */
    String text() {
        return roll + "C" + digits;
    }

    private static int digitsEnd(String name, int start) {
        int end = start;
        while (end < name.length() && end <= start + MOST_DIGITS && isDigit(name.charAt(end))) {
            end++;
        }
        return end;
    }

    /** Where a roll's code that ends here begins; the end itself if there is none. */
    private static int rollStart(String name, int end) {
        int start = end;
        while (start > 0 && end - start <= LONGEST_ROLL && isDigit(name.charAt(start - 1))) {
            start--;
        }
        if (start == end || start == 0 || !isLetter(name.charAt(start - 1))) {
            return end;
        }
        while (start > 0 && (isLetter(name.charAt(start - 1)) || isDigit(name.charAt(start - 1)))) {
            start--;
            if (end - start > LONGEST_ROLL) {
                return end;
            }
        }
        return start;
    }

    private static boolean isSeparator(char c) {
        return c == '_' || c == '-';
    }

    private static boolean isLetter(char c) {
        return c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z';
    }

    static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }
}

package rollbook.manifest;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A pattern for one name of a path: {@code *} for any characters, {@code ?} for one, {@code [a-z]} for one of a class,
 * {@code [!a-z]} or {@code [^a-z]} for one that isn't, a backslash before a character that means itself.
 *
 * <p>Matching keeps one way back only, to the latest star, so it takes at most pattern times name steps.
 */
final class NameGlob {
    private static final One ANY_ONE = c -> true;

    private interface One {
        boolean is(int codePoint);
    }

    /** A null stands for a star. */
    private final List<@Nullable One> parts;

    private final @Nullable String plain; // most patterns have nothing special

    private NameGlob(List<@Nullable One> parts, @Nullable String plain) {
        this.parts = parts;
        this.plain = plain;
    }

    /** Null when the pattern is malformed (a class without end, a backslash at the end): it then matches nothing. */
    static @Nullable NameGlob of(String pattern) {
        int[] text = pattern.codePoints().toArray();
        List<@Nullable One> parts = new ArrayList<>();
        int i = 0;
        while (i < text.length) {
            switch (text[i]) {
                case '*' -> {
                    if (parts.isEmpty() || parts.get(parts.size() - 1) != null) {
                        parts.add(null);
                    }
                    i++;
                }
                case '?' -> {
                    parts.add(ANY_ONE);
                    i++;
                }
                case '[' -> {
                    int end = endOfClass(text, i);
                    if (end < 0) {
                        return null;
                    }
                    parts.add(oneOf(text, i + 1, end));
                    i = end + 1;
                }
                case '\\' -> {
                    if (i + 1 == text.length) {
                        return null;
                    }
                    parts.add(exactly(text[i + 1]));
                    i += 2;
                }
                default -> {
                    parts.add(exactly(text[i]));
                    i++;
                }
            }
        }
        boolean special = pattern.codePoints().anyMatch(c -> "*?[\\".indexOf(c) >= 0);
        return new NameGlob(parts, special ? null : pattern);
    }

    boolean matches(String name) {
        return plain == null ? matchesParts(name) : plain.equals(name);
    }

    private boolean matchesParts(String name) {
        int part = 0;
        int at = 0;
        int starPart = -1;
        int starAt = 0;
        while (at < name.length()) {
            int c = name.codePointAt(at);
            One one = part < parts.size() ? parts.get(part) : null;
            if (one != null && one.is(c)) {
                part++;
                at += Character.charCount(c);
            } else if (one == null && part < parts.size()) {
                starPart = part++;
                starAt = at;
            } else if (starPart >= 0) {
                part = starPart + 1;
                starAt += Character.charCount(name.codePointAt(starAt));
                at = starAt;
            } else {
                return false;
            }
        }
        while (part < parts.size() && parts.get(part) == null) {
            part++;
        }
        return part == parts.size();
    }

    private static One exactly(int wanted) {
        return c -> c == wanted;
    }

    /** Where the class that opens here closes; a closing bracket right at its start stands for itself. */
    private static int endOfClass(int[] text, int open) {
        int first = open + 1;
        if (first < text.length && isNegation(text[first])) {
            first++;
        }
        for (int i = first; i < text.length; i++) {
            if (text[i] == '\\') {
                i++;
            } else if (text[i] == ']' && i > first) {
                return i;
            }
        }
        return -1;
    }

    private static One oneOf(int[] text, int from, int end) {
        boolean negated = isNegation(text[from]);
        List<int[]> ranges = new ArrayList<>();
        int i = negated ? from + 1 : from;
        while (i < end) {
            i = text[i] == '\\' ? i + 1 : i;
            int low = text[i++];
            int high = low;
            if (i + 1 < end && text[i] == '-') {
                i = text[i + 1] == '\\' ? i + 2 : i + 1;
                high = text[i++];
            }
            ranges.add(new int[] {low, high});
        }
        return c -> negated != isIn(ranges, c);
    }

    private static boolean isIn(List<int[]> ranges, int c) {
        for (int[] range : ranges) {
            if (range[0] <= c && c <= range[1]) {
                return true;
            }
        }
        return false;
    }

    private static boolean isNegation(int c) {
        return c == '!' || c == '^';
    }
}

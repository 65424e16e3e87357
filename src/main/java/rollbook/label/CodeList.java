package rollbook.label;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rollbook.inventory.NumberRun;

/**
 * Codes as people write them: one after another, apart by spaces, commas or lines, and {@code CARD-001 to CARD-024} for
 * all from the one to the other.
 */
public final class CodeList {
    private static final Pattern APART = Pattern.compile("[\\s,;]+");
    private static final Pattern NUMBERED =
            Pattern.compile("(.*?)(\\d{1," + NumberRun.MOST_DIGITS + "})", Pattern.DOTALL);
    private static final String TO = "TO";
    /** Fewer than this one after another are written out. */
    private static final int SHORTEST_RUN = 3;

    private CodeList() {}

    /** Says which part of the list can't be understood. */
    public static final class Unclear extends Exception {
        private final String from;
        private final String to;

        Unclear(String from, String to) {
            super("from " + from + " to " + to);
            this.from = from;
            this.to = to;
        }

        public String from() {
            return from;
        }

        public String to() {
            return to;
        }
    }

    /**
     * In the order in which they are written, in capitals, each once.
     *
     * @throws Unclear if two codes with "to" between them aren't the ends of a run of at most {@link NumberRun#MOST}
     */
    public static List<String> read(String typed) throws Unclear {
        List<String> words = APART.splitAsStream(typed.toUpperCase(Locale.ROOT))
                .filter(word -> !word.isEmpty())
                .toList();
        Set<String> codes = new LinkedHashSet<>();
        int at = 0;
        while (at < words.size()) {
            if (at + 2 < words.size() && words.get(at + 1).equals(TO)) {
                codes.addAll(run(words.get(at), words.get(at + 2)));
                at += 3;
            } else {
                codes.add(words.get(at));
                at++;
            }
        }
        return List.copyOf(codes);
    }

    private static List<String> run(String from, String to) throws Unclear {
        Matcher first = NUMBERED.matcher(from);
        Matcher last = NUMBERED.matcher(to);
        if (!first.matches()
                || !last.matches()
                || !first.group(1).equals(last.group(1))
                || first.group(2).length() != last.group(2).length()) {
            throw new Unclear(from, to);
        }
        int start = Integer.parseInt(first.group(2));
        int count = Integer.parseInt(last.group(2)) - start + 1;
        if (count < 1 || count > NumberRun.MOST) {
            throw new Unclear(from, to);
        }
        return new NumberRun(first.group(1), start, first.group(2).length(), count).codes();
    }

    /** As {@link #read} understands it, runs drawn together. */
    public static String write(List<String> codes) {
        List<String> parts = new ArrayList<>();
        int at = 0;
        while (at < codes.size()) {
            int next = at + 1;
            while (next < codes.size() && next - at < NumberRun.MOST && follows(codes.get(next - 1), codes.get(next))) {
                next++;
            }
            if (next - at >= SHORTEST_RUN) {
                parts.add(codes.get(at) + " to " + codes.get(next - 1));
            } else {
                parts.addAll(codes.subList(at, next));
            }
            at = next;
        }
        return String.join(", ", parts);
    }

    private static boolean follows(String code, String next) {
        Matcher one = NUMBERED.matcher(code);
        Matcher other = NUMBERED.matcher(next);
        return one.matches()
                && other.matches()
                && one.group(1).equals(other.group(1))
                && one.group(2).length() == other.group(2).length()
                && Integer.parseInt(one.group(2)) + 1 == Integer.parseInt(other.group(2));
    }
}

package rollbook.purchase;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import rollbook.inventory.ItemDetails;

/**
 * Serial numbers as a scanner types them: one a line, and each only once, whatever the case of its letters. Several lists
 * of one form are read one after another.
 */
final class SerialLines {
    /** No list of serial numbers is longer than a run of codes may be. */
    static final int MOST = 500;

    private static final Pattern LINE_END = Pattern.compile("\r\n|\n|\r");
    private static final Pattern UNPRINTABLE = Pattern.compile("[\\p{Cc}\\p{Cs}\\p{Zl}\\p{Zp}]");

    private final Map<String, String> known;
    private final Set<String> above = new HashSet<>();

    /** @param known codes of the items that have these serial numbers already, by the number in capitals */
    SerialLines(Map<String, String> known) {
        this.known = Map.copyOf(known);
    }

    /** @param number of the line as it was typed, empty ones counted too */
    record Line(int number, String serial) {}

    /** What is wrong: the message {@code key}, whose first argument is the line. */
    record Wrong(String key, List<Object> args) {
        static Wrong at(Line line, String key, Object... more) {
            List<Object> args = new ArrayList<>(List.of(line.number()));
            args.addAll(List.of(more));
            return new Wrong(key, args);
        }
    }

    static List<Line> split(String typed) {
        String[] lines = LINE_END.split(typed);
        List<Line> serials = new ArrayList<>();
        for (int i = 0; i < lines.length; i++) {
            if (!lines[i].isBlank()) {
                serials.add(new Line(i + 1, lines[i].strip()));
            }
        }
        return serials;
    }

    /** All that is wrong with the lines of the next list. */
    List<Wrong> check(List<Line> lines) {
        List<Wrong> wrong = new ArrayList<>();
        Map<String, Integer> here = new HashMap<>();
        for (Line line : lines) {
            String capitals = line.serial().toUpperCase(Locale.ROOT);
            Integer before = here.putIfAbsent(capitals, line.number());
            if (line.serial().length() > ItemDetails.LONGEST_SERIAL) {
                wrong.add(Wrong.at(line, "purchase.problem.serial-long", ItemDetails.LONGEST_SERIAL));
            } else if (UNPRINTABLE.matcher(line.serial()).find()) {
                wrong.add(Wrong.at(line, "purchase.problem.serial-unprintable"));
            } else if (before != null) {
                wrong.add(Wrong.at(line, "purchase.problem.serial-twice", line.serial(), before));
            } else if (above.contains(capitals)) {
                wrong.add(Wrong.at(line, "purchase.problem.serial-above", line.serial()));
            } else if (known.containsKey(capitals)) {
                wrong.add(Wrong.at(line, "purchase.problem.serial-known", line.serial(), known.get(capitals)));
            }
        }
        above.addAll(here.keySet());
        return wrong;
    }
}

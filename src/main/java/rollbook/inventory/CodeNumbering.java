package rollbook.inventory;

import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rollbook.production.MediaKind;

/**
 * How a production numbers its items: new ones go on where the last of their kind ended. What was given is remembered, so
 * that one numbering serves several runs.
 */
public final class CodeNumbering {
    private static final Pattern NUMBERED = Pattern.compile("(.*?)(\\d{1," + NumberRun.MOST_DIGITS + "})");
    private static final int USUAL_DIGITS = 3;

    private final List<Numbered> numbered;
    private final Set<String> taken = new HashSet<>();

    /** @param items all that the production ever had, in the order of their codes */
    public CodeNumbering(Collection<MediaItem> items) {
        numbered = items.stream()
                .flatMap(item -> Numbered.of(item.code())
                        .map(code -> new Numbered(item.kind(), item.model(), code.prefix, code.number, code.digits))
                        .stream())
                .toList();
        items.forEach(item -> taken.add(item.code().toUpperCase(Locale.ROOT)));
    }

    private record Numbered(MediaKind kind, String model, String prefix, int number, int digits) {
        static Optional<Numbered> of(String code) {
            Matcher matcher = NUMBERED.matcher(code.toUpperCase(Locale.ROOT));
            return matcher.matches()
                    ? Optional.of(new Numbered(
                            MediaKind.CARD,
                            "",
                            matcher.group(1),
                            Integer.parseInt(matcher.group(2)),
                            matcher.group(2).length()))
                    : Optional.empty();
        }
    }

    /**
     * Free codes for items of a model: they go on from the highest number of that model's codes, else of the kind's, else
     * they begin with the kind and 1.
     *
     * @param count at most {@link NumberRun#MOST}
     */
    public List<String> next(MediaKind kind, String model, int count) {
        Numbered last = last(item -> item.kind == kind && item.model.equalsIgnoreCase(model))
                .or(() -> last(item -> item.kind == kind))
                .orElse(new Numbered(kind, model, kind.name() + "-", 0, USUAL_DIGITS));
        int first = 1
                + numbered.stream()
                        .filter(item -> item.prefix.equals(last.prefix))
                        .mapToInt(Numbered::number)
                        .max()
                        .orElse(0);
        List<String> codes = run(last.prefix, first, last.digits, count);
        while (codes.stream().anyMatch(taken::contains)) {
            first++;
            codes = run(last.prefix, first, last.digits, count);
        }
        taken.addAll(codes);
        return codes;
    }

    /** Gives out a code that somebody chose; false if it is taken. */
    public boolean take(String code) {
        return taken.add(code.toUpperCase(Locale.ROOT));
    }

    /**
     * Codes that count up from the one that was typed.
     *
     * @return empty if it doesn't end in a number, or there are too many to count
     */
    public static Optional<List<String>> from(String firstCode, int count) {
        return Numbered.of(firstCode)
                .filter(first -> NumberRun.digitsOf(first.number + count - 1L) <= NumberRun.MOST_DIGITS)
                .map(first -> run(first.prefix, first.number, first.digits, count));
    }

    private Optional<Numbered> last(Predicate<Numbered> of) {
        return numbered.stream().filter(of).max(Comparator.comparingInt(Numbered::number));
    }

    private static List<String> run(String prefix, int first, int digits, int count) {
        int needed = NumberRun.digitsOf(first + count - 1L);
        return new NumberRun(prefix, first, Math.max(digits, needed), count).codes();
    }
}

package rollbook.manifest;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Files whose paths differ in one number only, such as missing frames of a clip; or one file without such a number.
 *
 * @param clip the clip that they belong to, or null
 * @param head the path up to the number; the whole path if there is none
 * @param digits digits of the number, leading zeros included; 0 if there is none
 * @param tail what follows the number
 * @param numbers which numbers; 0 alone if there is none
 */
public record PathRange(@Nullable String clip, String head, int digits, String tail, List<NumberRange> numbers) {

    public PathRange {
        numbers = List.copyOf(numbers);
    }

    /** All of the paths, each once, in the order in which the first file of each is named. */
    public static List<PathRange> fold(Collection<String> paths) {
        Map<String, FileGroup> groups = new LinkedHashMap<>();
        for (String path : paths) {
            FileGroup fresh = FileGroup.of(path);
            FileGroup group = groups.computeIfAbsent(fresh.key(), key -> fresh);
            group.numbers.add(group.numberOf(path));
        }
        return groups.values().stream().map(FileGroup::range).toList();
    }

    public static PathRange of(String path) {
        return fold(List.of(path)).get(0);
    }

    /** Whether the file's name has a number that may count frames. */
    public boolean isNumbered() {
        return digits > 0;
    }

    public long files() {
        return numbers.stream().mapToLong(NumberRange::size).sum();
    }

    /** The numbers as people read them: 12, 1043–1187. */
    public String numbersText() {
        StringBuilder text = new StringBuilder();
        numbers.forEach(range -> text.append(text.isEmpty() ? "" : ", ").append(range));
        return text.toString();
    }

    /** The path, with # for each digit of the number. */
    public String pattern() {
        return head + "#".repeat(digits) + tail;
    }

    /** Every path. */
    public List<String> paths() {
        if (digits == 0) {
            return List.of(head);
        }
        List<String> paths = new ArrayList<>();
        for (NumberRange range : numbers) {
            for (long number = range.first(); number <= range.last(); number++) {
                paths.add(head + NumberRange.padded((int) number, digits) + tail);
            }
        }
        return paths;
    }
}

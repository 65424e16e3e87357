package rollbook.forecast;

import java.util.ArrayList;
import java.util.List;

/** Numbers as people write them down: 1–5, 7, 9–11. */
final class NumberRanges {
    private NumberRanges() {}

    static String of(List<Integer> numbers) {
        List<Integer> ascending = numbers.stream().distinct().sorted().toList();
        List<String> ranges = new ArrayList<>();
        int first = 0;
        for (int i = 0; i < ascending.size(); i++) {
            boolean goesOn = i + 1 < ascending.size() && ascending.get(i + 1) == ascending.get(i) + 1;
            if (!goesOn) {
                ranges.add(first == i ? ascending.get(i).toString() : ascending.get(first) + "–" + ascending.get(i));
                first = i + 1;
            }
        }
        return String.join(", ", ranges);
    }
}

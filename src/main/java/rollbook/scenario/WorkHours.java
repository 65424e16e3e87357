package rollbook.scenario;

import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;

/**
 * A day from call to wrap with its breaks, in minutes from midnight of its date. What is written earlier than the call is
 * after midnight; breaks outside the day don't count.
 */
record WorkHours(int callMinutes, int wrapMinutes, List<Span> breaks) {
    /** No camera records all the time: more than this share of the working hours isn't believed. */
    static final double MOST_RECORDED = 0.95;

    private static final int DAY = 24 * 60;

    /** A break, in minutes from midnight. */
    record Span(int fromMinutes, int toMinutes) {}

    static WorkHours of(String call, String wrap, String breaks) {
        int from = minutes(call);
        int to = after(minutes(wrap), from);
        List<Span> spans = new ArrayList<>();
        for (String part : breaks.isEmpty() ? new String[0] : breaks.split(", ")) {
            int dash = part.indexOf('-');
            int start = after(minutes(part.substring(0, dash)), from - 1);
            int end = Math.min(to, after(minutes(part.substring(dash + 1)), start));
            if (start < end) {
                spans.add(new Span(start, end));
            }
        }
        return new WorkHours(from, to, merged(spans));
    }

    private static List<Span> merged(List<Span> spans) {
        List<Span> merged = new ArrayList<>();
        spans.stream()
                .sorted((one, other) -> Integer.compare(one.fromMinutes(), other.fromMinutes()))
                .forEach(span -> {
                    Span last = merged.isEmpty() ? null : merged.get(merged.size() - 1);
                    if (last != null && span.fromMinutes() <= last.toMinutes()) {
                        merged.set(
                                merged.size() - 1,
                                new Span(last.fromMinutes(), Math.max(last.toMinutes(), span.toMinutes())));
                    } else {
                        merged.add(span);
                    }
                });
        return List.copyOf(merged);
    }

    /** Minutes in which cameras may record. */
    int workMinutes() {
        return wrapMinutes
                - callMinutes
                - breaks.stream()
                        .mapToInt(span -> span.toMinutes() - span.fromMinutes())
                        .sum();
    }

    /** That time of the day, in minutes from midnight; what is before the call is on the next day. */
    int at(String time) {
        return after(minutes(time), callMinutes - 1);
    }

    private static int minutes(String time) {
        return LocalTime.parse(time).toSecondOfDay() / 60;
    }

    private static int after(int minutes, int than) {
        return minutes > than ? minutes : minutes + DAY;
    }
}

package rollbook.shipment;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import rollbook.web.Typed;

/**
 * What a receiver says, read from a form that has a line for each item.
 *
 * @param name who receives; of use only where nobody is signed in
 * @param all whether what has no choice of its own arrived as listed
 * @param problems message keys by field
 */
record ReceiptForm(String name, boolean all, List<Line> lines, Map<String, String> problems) {
    private static final int LONGEST_NAME = 80;
    private static final int LONGEST_NOTE = 200;

    /** @param outcome null while nothing is chosen */
    record Line(UUID itemId, String code, Arrival.@Nullable Outcome outcome, String note) {
        public String outcomeField() {
            return "outcome-" + itemId;
        }

        public String noteField() {
            return "note-" + itemId;
        }
    }

    static ReceiptForm blank(List<ShipmentItem> open) {
        return new ReceiptForm(
                "",
                false,
                open.stream()
                        .map(item -> new Line(item.itemId(), item.code(), null, ""))
                        .toList(),
                Map.of());
    }

    /**
     * @param typed the value of a field of the form, null if it wasn't sent
     * @param withName whether a name is asked for, and each item must be spoken of
     */
    static ReceiptForm read(List<ShipmentItem> open, Function<String, @Nullable String> typed, boolean withName) {
        Map<String, String> problems = new LinkedHashMap<>();
        String name = Typed.text(typed.apply("name"));
        if (withName && name.isEmpty()) {
            problems.put("name", "shipment.receipt.problem.name");
        } else if (!isKeepable(name, LONGEST_NAME)) {
            problems.put("name", "shipment.receipt.problem.unkeepable");
        }
        boolean all = typed.apply("all") != null;
        List<Line> lines = open.stream()
                .map(item -> line(item, typed, all, withName, problems))
                .toList();
        if (lines.stream().allMatch(line -> line.outcome() == null) && problems.isEmpty()) {
            problems.put("all", "shipment.receipt.problem.nothing");
        }
        return new ReceiptForm(name, all, lines, problems);
    }

    private static Line line(
            ShipmentItem item,
            Function<String, @Nullable String> typed,
            boolean all,
            boolean needed,
            Map<String, String> problems) {
        Line empty = new Line(item.itemId(), item.code(), null, "");
        String note = Typed.text(typed.apply(empty.noteField()));
        Arrival.Outcome chosen =
                outcome(typed.apply(empty.outcomeField())).orElse(all ? Arrival.Outcome.ARRIVED : null);
        if (chosen == null && needed) {
            problems.put(empty.outcomeField(), "shipment.receipt.problem.outcome");
        }
        if (!isKeepable(note, LONGEST_NOTE)) {
            problems.put(empty.noteField(), "shipment.receipt.problem.unkeepable");
        }
        return new Line(item.itemId(), item.code(), chosen, note);
    }

    public boolean isWrong() {
        return !problems.isEmpty();
    }

    /** Only of a form that isn't wrong. */
    List<Arrival> arrivals() {
        return lines.stream()
                .flatMap(line -> Optional.ofNullable(line.outcome()).stream()
                        .map(outcome -> new Arrival(line.itemId(), outcome, line.note())))
                .toList();
    }

    private static Optional<Arrival.Outcome> outcome(@Nullable String typed) {
        return Arrays.stream(Arrival.Outcome.values())
                .filter(outcome -> outcome.name().equals(typed))
                .findFirst();
    }

    private static boolean isKeepable(String text, int most) {
        return text.codePointCount(0, text.length()) <= most
                && text.codePoints().noneMatch(Character::isISOControl);
    }
}

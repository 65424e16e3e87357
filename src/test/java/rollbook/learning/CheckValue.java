package rollbook.learning;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVRecord;
import rollbook.testing.CheckValueFile;

/** One line of {@code check-values.csv}, which explains its columns itself. */
record CheckValue(
        String quantity,
        String kind,
        Map<String, String> inputs,
        double[] expected,
        String within,
        String status,
        String source) {

    static List<CheckValue> all() {
        return CheckValueFile.lines(CheckValue.class, "check-values.csv").stream()
                .map(CheckValue::of)
                .toList();
    }

    private static CheckValue of(CSVRecord line) {
        return new CheckValue(
                line.get("quantity"),
                line.get("kind"),
                Arrays.stream(line.get("inputs").split(" "))
                        .map(input -> input.split("="))
                        .collect(Collectors.toMap(parts -> parts[0], parts -> parts[1])),
                list(line.get("expected")),
                line.get("within"),
                line.get("status"),
                line.get("source"));
    }

    private static double[] list(String text) {
        return Arrays.stream(text.split(";")).mapToDouble(Double::parseDouble).toArray();
    }

    boolean has(String input) {
        return inputs.containsKey(input);
    }

    double[] numbers(String input) {
        return has(input) ? list(inputs.get(input)) : new double[0];
    }

    double number(String input) {
        return Double.parseDouble(inputs.get(input));
    }

    int count(String input) {
        return Integer.parseInt(inputs.get(input));
    }

    /** How far a result may be from what is expected. */
    double tolerance(double of) {
        return within.startsWith("±")
                ? Double.parseDouble(within.substring(1))
                : Math.abs(of) * Double.parseDouble(within.replace("%", "")) / 100;
    }

    String displayName() {
        return quantity + " [" + source + "; " + status + "]";
    }
}

package rollbook.recording;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import rollbook.quantity.Fraction;
import rollbook.testing.CheckValueFile;

/** One line of {@code check-values.csv}, which explains its columns itself. */
record CheckValue(
        String id,
        String quantity,
        String kind,
        CheckValueInputs inputs,
        Fraction expected,
        String unit,
        String published,
        String publishedWithin,
        String status,
        String source) {

    static List<CheckValue> all() {
        return CheckValueFile.lines(CheckValue.class, "check-values.csv").stream()
                .map(CheckValue::of)
                .toList();
    }

    private static CheckValue of(CSVRecord line) {
        return new CheckValue(
                line.get("id"),
                line.get("quantity"),
                line.get("kind"),
                CheckValueInputs.parse(line.get("inputs")),
                Fraction.parse(line.get("expected")),
                line.get("unit"),
                line.get("published"),
                line.get("published_within"),
                line.get("status"),
                line.get("source"));
    }

    String displayName() {
        return id + ": " + quantity + " [" + source + "; " + status + "]";
    }

    /** Whether the source prints a figure that an exact result of this size agrees with. */
    boolean agreesWithPublished(Fraction exact) {
        BigDecimal printed = new BigDecimal(published);
        BigDecimal actual = exact.toBigDecimal(15, RoundingMode.HALF_EVEN);
        if (publishedWithin.equals("exact")) {
            return exact.equals(Fraction.of(printed));
        }
        if (publishedWithin.startsWith("+")) {
            String[] bounds = publishedWithin.replace("+", "").replace("%", "").split("\\.\\.");
            return actual.compareTo(above(printed, bounds[0])) >= 0 && actual.compareTo(above(printed, bounds[1])) <= 0;
        }
        BigDecimal allowed = new BigDecimal(publishedWithin.replace("±", "").replace("%", ""));
        if (publishedWithin.endsWith("%")) {
            allowed = printed.multiply(allowed).movePointLeft(2);
        }
        return actual.subtract(printed).abs().compareTo(allowed) <= 0;
    }

    private static BigDecimal above(BigDecimal printed, String percent) {
        return printed.multiply(BigDecimal.ONE.add(new BigDecimal(percent).movePointLeft(2)));
    }
}

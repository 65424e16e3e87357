package rollbook.recording;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import rollbook.quantity.ByteCount;
import rollbook.quantity.ByteUnit;
import rollbook.quantity.DataRate;
import rollbook.quantity.Fraction;

/** The named inputs of a check value; asking for one that is not there fails, and what was asked for is remembered. */
record CheckValueInputs(Map<String, String> values, Set<String> used) {

    static CheckValueInputs parse(String text) {
        Map<String, String> values = new LinkedHashMap<>();
        for (String pair : text.split(" ")) {
            String[] parts = pair.split("=", 2);
            values.put(parts[0], parts[1]);
        }
        return new CheckValueInputs(values, new HashSet<>());
    }

    boolean has(String name) {
        return values.containsKey(name);
    }

    boolean allUsed() {
        return used.equals(values.keySet());
    }

    String text(String name) {
        used.add(name);
        return Objects.requireNonNull(values.get(name), name);
    }

    long number(String name) {
        return Long.parseLong(text(name));
    }

    int count(String name) {
        return Integer.parseInt(text(name));
    }

    Fraction fraction(String name) {
        return Fraction.parse(text(name));
    }

    FrameRate frameRate(String name) {
        return FrameRate.parse(text(name));
    }

    Packing packing() {
        return Packing.valueOf(text("packing"));
    }

    PictureSize size() {
        String[] sides = text("size").split("x");
        return new PictureSize(Integer.parseInt(sides[0]), Integer.parseInt(sides[1]));
    }

    TapeGeneration tape(String name) {
        return TapeGeneration.valueOf(text(name));
    }

    ByteUnit unit(String name) {
        return ByteUnit.valueOf(text(name));
    }

    /** An amount such as 1TB. */
    ByteCount bytes(String name) {
        return amount(text(name));
    }

    DataRate bits(String name) {
        return DataRate.ofBitsPerSecond(Fraction.of(number(name)));
    }

    /** A rate written as the amount of one second. */
    static DataRate perSecond(String amount) {
        return DataRate.ofBytesPerSecond(amount(amount).bytes());
    }

    private static ByteCount amount(String text) {
        String digits = text.replaceAll("\\D", "");
        return ByteCount.of(Long.parseLong(digits), ByteUnit.valueOf(text.substring(digits.length())));
    }
}

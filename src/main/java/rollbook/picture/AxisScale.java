package rollbook.picture;

import java.math.BigDecimal;
import java.util.List;
import java.util.stream.LongStream;
import rollbook.quantity.ExactDivision;

/**
 * A vertical axis of bytes from zero up, with ticks a round step of 1, 2 or 5 times a power of ten apart.
 *
 * @param unit the decimal unit that the ticks' labels are in
 * @param baseY y of zero bytes; y grows downwards
 */
public record AxisScale(String unit, long topBytes, double baseY, double topY, List<Tick> ticks) {

    /** A tick with its number as text, in the axis's unit, and the bytes it stands for. */
    public record Tick(long bytes, String label, double y) {}

    private static final int STEPS_AT_MOST = 5;
    private static final List<String> UNITS = List.of("B", "kB", "MB", "GB", "TB", "PB", "EB");

    public static AxisScale of(long maxBytes, double baseY, double topY) {
        long step = step(maxBytes);
        long steps = Math.max(1, ExactDivision.ceil(maxBytes, step));
        long top = Math.multiplyExact(steps, step);
        int power = (Long.toString(top).length() - 1) / 3;
        List<Tick> ticks = LongStream.rangeClosed(0, steps)
                .map(i -> i * step)
                .mapToObj(bytes -> new Tick(bytes, label(bytes, power), y(bytes, top, baseY, topY)))
                .toList();
        return new AxisScale(UNITS.get(power), top, baseY, topY, ticks);
    }

    /** The smallest step of 1, 2 or 5 times a power of ten bytes that reaches the maximum in few enough steps. */
    static long step(long maxBytes) {
        long power = 1;
        while (true) {
            for (int factor : new int[] {1, 2, 5}) {
                long step = Math.multiplyExact(power, factor);
                if (ExactDivision.ceil(maxBytes, step) <= STEPS_AT_MOST) {
                    return step;
                }
            }
            power = Math.multiplyExact(power, 10);
        }
    }

    /** Where these bytes are; what is below zero is drawn at zero. */
    public double y(long bytes) {
        return y(bytes, topBytes, baseY, topY);
    }

    private static double y(long bytes, long topBytes, double baseY, double topY) {
        return Coordinates.round(baseY - (baseY - topY) * Math.max(0, bytes) / topBytes);
    }

    private static String label(long bytes, int power) {
        BigDecimal number = BigDecimal.valueOf(bytes).movePointLeft(3 * power);
        return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
    }
}

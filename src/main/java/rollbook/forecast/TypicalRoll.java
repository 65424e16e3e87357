package rollbook.forecast;

import java.util.List;

/**
 * How large a roll of the show usually is: half of all bytes lie in rolls at least so large. Many small rolls, such as
 * those of sound, then don't make it small.
 */
final class TypicalRoll {
    private TypicalRoll() {}

    /** Zero without a roll that holds anything. */
    static long bytes(List<Long> rollBytes) {
        List<Long> ascending = rollBytes.stream().sorted().toList();
        double half = ascending.stream().mapToDouble(Long::doubleValue).sum() / 2;
        double sum = 0;
        for (long bytes : ascending) {
            sum += bytes;
            if (sum >= half && bytes > 0) {
                return bytes;
            }
        }
        return 0;
    }
}

package rollbook.shipment;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What is left of rolls, each with the sentence that says so, the worst first.
 *
 * @param pressing rolls of which less than two proven copies are left
 * @param safe the others
 */
record LossTable(Map<LossLine, String> pressing, Map<LossLine, String> safe) {

    static LossTable of(Map<LossLine, String> lines) {
        LossTable table = new LossTable(new LinkedHashMap<>(), new LinkedHashMap<>());
        lines.forEach((line, says) -> (line.isSafe() ? table.safe : table.pressing).put(line, says));
        return table;
    }

    public boolean isEmpty() {
        return pressing.isEmpty() && safe.isEmpty();
    }
}

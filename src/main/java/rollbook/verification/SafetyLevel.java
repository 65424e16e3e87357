package rollbook.verification;

import java.util.ArrayList;
import java.util.List;

/**
 * How far up a scale of levels something has come.
 *
 * @param reached 0 if not even the first level is reached
 * @param missing what the next level asks for besides; empty on the highest
 */
record SafetyLevel(int reached, List<Missing> missing) {

    /** @param key of the message that says what is missing; {@code args} fill it */
    record Missing(String key, List<Object> args) {}

    /** Something that a level asks for. */
    record Demand(int level, boolean met, Missing missing) {
        static Demand of(int level, boolean met, String key, Object... args) {
            return new Demand(level, met, new Missing("verification.level." + key, List.of(args)));
        }
    }

    /** The highest level up to which every demand is met. */
    static SafetyLevel of(int highest, List<Demand> demands) {
        for (int level = 1; level <= highest; level++) {
            List<Missing> missing = new ArrayList<>();
            for (Demand demand : demands) {
                if (demand.level() == level && !demand.met()) {
                    missing.add(demand.missing());
                }
            }
            if (!missing.isEmpty()) {
                return new SafetyLevel(level - 1, List.copyOf(missing));
            }
        }
        return new SafetyLevel(highest, List.of());
    }
}

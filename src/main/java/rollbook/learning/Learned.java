package rollbook.learning;

import java.util.List;

/**
 * What the show has taught so far.
 *
 * @param units those with days, by name
 * @param newcomer what holds for a unit without days: what the others taught
 */
public record Learned(Habits habits, List<LearnedUnit> units, Belief newcomer, ZeroDays zeroDays) {
    public Learned {
        units = List.copyOf(units);
    }

    /** Also for a unit that hasn't wrapped a day yet. */
    public LearnedUnit unit(String name) {
        return units.stream()
                .filter(unit -> unit.unit().equals(name))
                .findAny()
                .orElseGet(() -> new LearnedUnit(
                        name, newcomer, habits.wander(), 0, 1, !units.isEmpty(), 0, 0, 0, null, List.of()));
    }
}

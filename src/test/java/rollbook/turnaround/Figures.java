package rollbook.turnaround;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;
import java.util.function.ToDoubleFunction;

/** Figures of a day, to be held against closed forms on the mean of independent days. */
final class Figures {
    private final List<Figure> figures = new ArrayList<>();

    private record Figure(String name, double expected, ToDoubleFunction<DayResult> of) {}

    Figures add(String name, double expected, ToDoubleFunction<DayResult> of) {
        figures.add(new Figure(name, expected, of));
        return this;
    }

    /** @param day of a replicate’s number */
    List<Compared> over(int days, IntFunction<DayResult> day) {
        double[][] simulated = new double[figures.size()][days];
        for (int i = 0; i < days; i++) {
            DayResult result = day.apply(i);
            for (int j = 0; j < figures.size(); j++) {
                simulated[j][i] = figures.get(j).of().applyAsDouble(result);
            }
        }
        List<Compared> compared = new ArrayList<>();
        for (int j = 0; j < figures.size(); j++) {
            compared.add(Compared.ofDays(figures.get(j).name(), figures.get(j).expected(), simulated[j]));
        }
        return compared;
    }
}

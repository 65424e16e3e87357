package rollbook.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/** How places are written, in pictures of a fixed width and in those that stretch. */
public final class Coordinates {
    private static final double PER_CENT = 100;

    private Coordinates() {}

    /** A tenth of a unit is finer than any screen shows, and keeps the page small. */
    public static double round(double coordinate) {
        return Math.round(coordinate * 10) / 10.0;
    }

    /** A share of the width of a picture that stretches: 37.50%. */
    public static String percent(double share) {
        return String.format(Locale.ROOT, "%.2f%%", share * PER_CENT);
    }

    /** Of things in the order of their places, from the left as many as have room for a label of the width each. */
    public static <T> List<T> withRoom(List<T> things, ToDoubleFunction<T> x, double width) {
        List<T> fitting = new ArrayList<>();
        double free = Double.NEGATIVE_INFINITY;
        for (T thing : things) {
            if (x.applyAsDouble(thing) >= free) {
                fitting.add(thing);
                free = x.applyAsDouble(thing) + width;
            }
        }
        return fitting;
    }
}

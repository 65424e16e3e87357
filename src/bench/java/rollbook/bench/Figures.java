package rollbook.bench;

import java.util.Arrays;
import java.util.Locale;

/** Prints figures, one a line, and does the arithmetic of several rounds. */
public final class Figures {
    private Figures() {}

    public static void print(String name, double value, String unit) {
        line(name, value, unit, "", "", "");
    }

    /** @param goal met by a value that is no larger */
    public static void atMost(String name, double value, String unit, double goal, String baseline) {
        line(name, value, unit, "at most " + text(goal), value <= goal ? "met" : "missed", baseline);
    }

    /** @param goal met by a value that is no smaller */
    public static void atLeast(String name, double value, String unit, double goal, String baseline) {
        line(name, value, unit, "at least " + text(goal), value >= goal ? "met" : "missed", baseline);
    }

    public static void done(String name, boolean done, String goal) {
        line(name, done ? "yes" : "no", "", goal, done ? "met" : "missed", "");
    }

    private static void line(
            String name, double value, String unit, String goal, String met, String baseline) {
        line(name, text(value), unit, goal, met, baseline);
    }

    private static void line(String name, String value, String unit, String goal, String met, String baseline) {
        System.out.println(String.join("\t", name, value, unit, goal, met, baseline));
        System.out.flush();
    }

    public static String text(double value) {
        return String.format(Locale.ROOT, Math.abs(value) < 10 ? "%.2f" : "%.1f", value);
    }

    public static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int middle = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }

    public static double seconds(long fromNanos) {
        return (System.nanoTime() - fromNanos) / 1e9;
    }
}

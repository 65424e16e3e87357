package rollbook.learning;

/** How good a forecast was, once the figure is known. Smaller is better; units are those of the figure. */
public final class Scores {
    private Scores() {}

    /**
     * Of a quantile: what lies above it costs its chance for each unit, what lies below the rest. Least on average when
     * the quantile is right (textbook; some texts double it).
     */
    public static double pinball(double chance, double actual, double forecast) {
        return Math.max(chance * (actual - forecast), (chance - 1) * (actual - forecast));
    }

    /**
     * Of a band: its width, and what lies outside 2 / outside times.
     *
     * @param outside chance to lie outside, 0.2 for an 80 % band
     */
    public static double interval(double outside, double actual, double low, double high) {
        return high - low + 2 / outside * (Math.max(0, low - actual) + Math.max(0, actual - high));
    }

    /** How far off in logs, such as 0.1 for a forecast about 10 % too high; averaged over forecasts it is the bias. */
    public static double logError(double actual, double forecast) {
        return Math.log(forecast / actual);
    }
}

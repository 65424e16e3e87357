package rollbook.forecast;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.picture.Words;

/**
 * A burn-down with its labels in place, ready to be printed as SVG.
 *
 * @param size {@code large} or {@code small}, for the screen it is meant for
 * @param title names the picture for who can't see it
 * @param description says what it shows
 * @param words what is written, and where
 */
record BurnDownPicture(
        BurnDownChart chart,
        String size,
        String title,
        String description,
        List<Words> words,
        @Nullable Flag flag) {

    /** The order-by date as a flag: a pole from the base up to a cloth that carries the words. */
    record Flag(double poleX, double baseY, double clothX, double clothY, double width, Words words) {}
}

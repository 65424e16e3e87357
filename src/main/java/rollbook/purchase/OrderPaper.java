package rollbook.purchase;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * An order as its supplier reads it: on paper and in a letter.
 *
 * @param reference of the order among all productions
 * @param state whether it orders anything, in plain words
 * @param binding whether it does
 * @param facts who orders what from whom, and where it goes
 * @param sums what it comes to
 * @param email of whom it is sent to; null if nobody is known
 */
record OrderPaper(
        String title,
        String reference,
        String state,
        boolean binding,
        List<Fact> facts,
        List<Row> rows,
        List<Fact> sums,
        String note,
        @Nullable String email) {

    record Fact(String name, String text) {}

    /** A line of the order. */
    record Row(int position, String what, int items, String how, String unit, String cost) {}
}

package rollbook.scenario;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.web.Link;

/**
 * A day played through, ready to be printed.
 *
 * @param tonight what is counted of a day that is being shot; empty otherwise
 * @param days other days that could be played
 * @param answers null while the figures aren't right
 * @param kept what has to be sent along to save what is shown
 * @param changed whether a figure isn't as the form began
 * @param additions what the figures add to what the production owns
 */
record TurnaroundPage(
        String title,
        String tonight,
        List<Link> days,
        SheetPage sheet,
        @Nullable Answers answers,
        List<SheetLine> kept,
        boolean changed,
        List<String> additions) {

    /** What playing the day tells. */
    record Answers(
            String sentence,
            TimelinePicture timeline,
            List<CameraRow> cameras,
            List<UseRow> uses,
            List<HourRow> hours,
            String chances,
            List<FloatPart> floats,
            Help help) {}

    record CameraRow(String camera, String recorded, String waiting, String waitingRange, String cards) {}

    /** @param share between 0 and 1 */
    record UseRow(String part, String busy, String percent, double share) {}

    record HourRow(String hour, String held) {}

    /** The float of a kind of card. */
    record FloatPart(String title, String sentence, List<FloatRow> rows) {}

    record FloatRow(
            String cards, String chance, String chanceRange, String waiting, String waitingRange, boolean now) {}

    /** @param best sentence on the best set under the budget; empty if there is no budget */
    record Help(List<HelpRow> rows, String best) {}

    record HelpRow(
            String change,
            String proven,
            String provenRange,
            String waiting,
            String waitingRange,
            String cost,
            boolean nothing) {}
}

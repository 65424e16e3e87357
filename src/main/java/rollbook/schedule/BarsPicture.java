package rollbook.schedule;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.picture.Words;

/**
 * The days of a unit as a picture, as a sentence and as rows.
 *
 * @param sentence what the picture says; who can't see it hears this
 * @param drawings the same for a wide page and for a phone
 */
record BarsPicture(UUID unitId, String title, String sentence, List<Drawing> drawings, List<Row> rows) {

    /**
     * The picture with its words in place.
     *
     * @param size {@code large} or {@code small}, for the screen it is meant for
     * @param upright words that are written upwards, beside the bar they are about
     */
    record Drawing(BarsChart chart, String size, List<Words> words, List<Words> upright) {}

    /**
     * A day. Bytes are null where there is nothing to say.
     *
     * @param remark what is out of the ordinary, in words; empty if nothing is
     * @param difference recorded less planned, and what that is of the plan; empty while the day isn't over
     * @param range low and high, empty where nothing is expected
     */
    record Row(
            String date,
            String day,
            String remark,
            @Nullable Long planned,
            @Nullable Long recorded,
            String difference,
            @Nullable Long expected,
            String range) {}
}

package rollbook.inventory;

import java.time.Instant;
import java.util.List;
import rollbook.picture.Trail;

/**
 * Where an item was and what happened to it.
 *
 * @param sentence with whom it is since when, and with whom it was before
 * @param days how each day of {@code trail} that has a label is written
 */
record TrailPicture(String sentence, Trail trail, List<String> days, List<Row> rows) {

    /** Something that other modules did to the item. */
    record Row(Instant at, String kind, String says) {}
}

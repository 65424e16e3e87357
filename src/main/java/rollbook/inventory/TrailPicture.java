package rollbook.inventory;

import java.time.Instant;
import java.util.List;
import rollbook.picture.Trail;

/**
 * Where an item was and what happened to it.
 *
 * @param sentence with whom it is since when, and with whom it was before
 */
record TrailPicture(String sentence, Trail trail, List<Row> rows) {

    /** Something that other modules did to the item. */
    record Row(Instant at, String kind, String says) {}
}

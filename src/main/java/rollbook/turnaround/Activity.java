package rollbook.turnaround;

import org.jspecify.annotations.Nullable;

/**
 * A bar of the timeline.
 *
 * <p>The bars of a card’s lane follow each other without a gap from the day’s start to its end. Those of a destination may
 * overlap, for offloads share it.
 *
 * @param lane name of the camera, card, reader or destination
 * @param card name: its kind and its number among them; null where none is concerned
 * @param camera whose recording it is or will be; null for a blank card
 * @param part where a card is: the camera, or the reader that is held by it; on a reader’s and a destination’s lane its name
 */
public record Activity(
        Lane of,
        String lane,
        Kind kind,
        long fromMillis,
        long toMillis,
        @Nullable String card,
        @Nullable String camera,
        @Nullable String part) {
    public enum Lane {
        CAMERA,
        CARD,
        READER,
        DESTINATION
    }

    public enum Kind {
        /** Camera: a take. */
        RECORDING,
        /** Camera: a blank card is put in. */
        CHANGING,
        /** Camera: a take is due and there is no blank card. */
        WAITING,
        /** Camera. */
        BREAK,
        /** Card: on the shelf. */
        BLANK,
        /** Card. */
        IN_CAMERA,
        /** Card: pulled, nobody has left with it yet. */
        PULLED,
        /** Card: on its way to the station. */
        CARRIED,
        /** Card: at the station, no reader is free. */
        QUEUED,
        /** Card and reader: a person puts it in. */
        HANDLING,
        /** Card and reader. */
        COPYING,
        /** Destination. */
        WRITING,
        /** Card, reader that is held, and destination. */
        READING_BACK,
        /** Card: copied, and read back only after wrap. */
        UNPROVEN,
        /** Card: proven, being cleared. */
        CLEARING,
        /** Card: blank, on its way back to the shelf. */
        RETURNING
    }
}

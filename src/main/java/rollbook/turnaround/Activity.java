package rollbook.turnaround;

import org.jspecify.annotations.Nullable;

/**
 * A bar of the timeline.
 *
 * <p>The bars of a card’s lane follow each other without a gap from the day’s start to its end. Those of a destination may
 * overlap, for offloads share it.
 *
 * @param lane whose lane: the card’s, camera’s, reader’s or destination’s name
 * @param card its number within its kind of card is part of its name; null where no card is concerned
 * @param camera whose recording it is; null for a blank card
 * @param part the reader or destination that is at work; null where none is
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

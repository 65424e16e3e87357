package rollbook.post;

/** How a roll, or a copy of it, stands at post; the worst first. */
enum PostState {
    LOST,
    /** Set says that it is there, or it was sent there; post says that it isn't. */
    NOT_HERE,
    /** A document about it says that it differs or lacks files. */
    DIFFERS,
    /** On a medium in quarantine. */
    DOUBTED,
    /** On its way, and expected before now. */
    LATE,
    /** It was there and has left, or was erased, without having been read there. */
    WENT_BACK,
    NOT_SENT,
    UNDER_WAY,
    /** Moved there by somebody; nobody there has said that it came. */
    SAID,
    /** There; nobody has read it there. */
    ARRIVED,
    /** Read there, by which it isn't proven. */
    READ,
    /** Read there, and proven by that. */
    PROVEN;

    /** Whether nobody need do anything about it. */
    boolean isDone() {
        return this == PROVEN;
    }
}

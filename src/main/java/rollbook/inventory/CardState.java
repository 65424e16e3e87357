package rollbook.inventory;

/** Where a card stands on its way from blank through a camera and back. */
public enum CardState {
    BLANK,
    IN_CAMERA,
    /** Pulled from the camera with a roll on it that nobody has begun to copy. */
    EXPOSED,
    COPYING,
    /** Copied, but not cleared: the only original. */
    HELD,
    CLEAR_TO_ERASE
}

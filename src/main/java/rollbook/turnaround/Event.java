package rollbook.turnaround;

/** What happens at an instant; of one instant in this order: what gets free comes before what asks for it. */
enum Event {
    /** The first of a station’s flows is done. */
    FLOW_DONE,
    CARD_CLEARED,
    CARD_RETURNED,
    CAMERA_CALL,
    /** The take is over or the card full. */
    CAMERA_STOP,
    CAMERA_LOADED,
    /** The set-up is over. */
    CAMERA_DUE,
    BREAK_OVER,
    BREAK_BEGINS,
    CAMERA_WRAP,
    /** The oldest pulled card has waited long enough. */
    RUNNER_LEAVES,
    RUNNER_ARRIVES,
    CARD_IN_READER,
    READER_DIES
}

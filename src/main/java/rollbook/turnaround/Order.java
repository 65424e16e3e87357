package rollbook.turnaround;

/** How the destinations of an offload come about. */
public enum Order {
    /** Written at once: the slowest holds the others back. Read back at once: each at its own speed. */
    TOGETHER,
    /** In the order in which the station lists them; written so, the card is read again for each. */
    ONE_AFTER_ANOTHER
}

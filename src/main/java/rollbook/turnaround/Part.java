package rollbook.turnaround;

/** What offloads may have to share or to wait for. */
public record Part(Kind kind, String name) {
    public enum Kind {
        /** Its way for the card is as fast as it gets, or it is held by a card. */
        READER,
        ADAPTER,
        /** Named by its station. */
        BUS,
        /** Named by its station. */
        ENCODER,
        DESTINATION,
        /** Its readers all together: cards wait in the queue. Named by its station. */
        READERS
    }
}

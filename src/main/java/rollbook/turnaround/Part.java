package rollbook.turnaround;

/** What offloads may have to share or to wait for. */
public record Part(Kind kind, String name) {
    public enum Kind {
        /** Held by a card; as what holds an offload back, the card’s own way with card, adapter and reader. */
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

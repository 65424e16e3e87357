package rollbook.turnaround;

/**
 * The float of one kind of card, all blank when the day begins.
 *
 * @param cards how many there are, in cameras, on the way, being read, or on the shelf
 */
public record CardStock(String cardType, long capacityBytes, int cards) {
    public CardStock {
        Invalid.ifBlank(cardType, "cardType");
        Invalid.unless(capacityBytes > 0, "capacityBytes", "must be above zero");
        Invalid.unless(cards >= 0, "cards", "must not be negative");
    }

    public CardStock withCards(int count) {
        return new CardStock(cardType, capacityBytes, count);
    }
}

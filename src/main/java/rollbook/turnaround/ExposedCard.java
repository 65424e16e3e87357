package rollbook.turnaround;

/**
 * A card that was exposed before the day that is played, and stands at a station when it begins. Once it is cleared it goes
 * round with the others.
 *
 * @param bytes that are to be copied
 * @param bytesPerFrame of what was recorded on it; tells an encoder that counts frames how long it takes
 */
public record ExposedCard(String name, String station, String cardType, long bytes, double bytesPerFrame) {
    public ExposedCard {
        Invalid.ifBlank(name, "name");
        Invalid.unless(bytes > 0, "bytes", "must be above zero");
        Invalid.unless(bytesPerFrame > 0, "bytesPerFrame", "must be above zero");
    }
}

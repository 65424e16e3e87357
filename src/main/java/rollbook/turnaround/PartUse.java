package rollbook.turnaround;

/**
 * How much a part had to do.
 *
 * @param busyMillis of a reader and an adapter: held by a card; of the others: full load, half load counts half
 * @param utilisation busy for so great a part of the time from the first call until the last card was proven, or the last
 *     camera wrapped if that was later
 */
public record PartUse(Part part, long busyMillis, double utilisation) {

    static PartUse of(Part part, long busyMillis, long spanMillis) {
        return new PartUse(part, busyMillis, (double) busyMillis / spanMillis);
    }
}

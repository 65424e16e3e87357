package rollbook.burndown;

import java.time.LocalDate;
import java.util.List;

/**
 * How all pools fare to the end of the show.
 *
 * @param seed with the same inputs it gives the same outlook
 * @param replicates how many courses of the show were played
 */
public record Outlook(LocalDate today, LocalDate endOfShow, long seed, int replicates, List<PoolOutlook> pools) {
    public Outlook {
        pools = List.copyOf(pools);
    }
}

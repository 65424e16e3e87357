package rollbook.burndown;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;
import static rollbook.burndown.Played.GB;
import static rollbook.burndown.Played.days;
import static rollbook.burndown.Played.item;
import static rollbook.burndown.Played.only;
import static rollbook.burndown.Played.pool;
import static rollbook.burndown.Played.show;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import rollbook.learning.Belief;
import rollbook.learning.Encodings;
import rollbook.quantity.Share;

class KeptTests {
    private static final int REPLICATES = 40_000;
    private static final long PLANNED = 10 * 1000 * GB;

    // The share is one for the whole show, so ten days vary as much as one: quantiles of the level in closed form
    // (log-t). A share drawn for each day would give a band a third as wide.
    @Test
    void aLearnedShareIsOneForTheWholeShow() {
        Belief belief = Encodings.prior(0.6);
        Band needed = needed(belief);

        assertThat(needed.p10() / (double) PLANNED).isCloseTo(belief.level().quantile(0.1), withinPercentage(0.4));
        assertThat(needed.p50() / (double) PLANNED).isCloseTo(belief.level().quantile(0.5), withinPercentage(0.2));
        assertThat(needed.p90() / (double) PLANNED).isCloseTo(belief.level().quantile(0.9), withinPercentage(0.4));
    }

    @Test
    void noCourseKeepsMoreThanWasRecorded() {
        Belief belief = Encodings.prior(0.99);

        assertThat(belief.level().quantile(0.9)).isGreaterThan(1);
        assertThat(needed(belief).p90()).isEqualTo(PLANNED);
    }

    private static Band needed(Belief belief) {
        double[] asPlanned = new double[REPLICATES];
        Arrays.fill(asPlanned, 1);
        Pool pool = pool(null, new Kept(Share.percent(60), belief), List.of(item(9000, 0)));
        return only(Simulation.run(
                        show(1, days(1, 10, 1000)),
                        List.of(pool),
                        (unit, day) -> asPlanned,
                        Share.WHOLE,
                        1,
                        REPLICATES))
                .neededBytes();
    }
}

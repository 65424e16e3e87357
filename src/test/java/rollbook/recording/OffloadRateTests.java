package rollbook.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import rollbook.quantity.ByteCount;
import rollbook.quantity.ByteUnit;
import rollbook.quantity.DataRate;
import rollbook.quantity.Fraction;
import rollbook.recording.OffloadRate.Link;
import rollbook.recording.OffloadRate.Place;

class OffloadRateTests {

    private static final ByteCount CARD = ByteCount.of(1, ByteUnit.TB);

    @Test
    void namesTheLinkThatHoldsTheOthersBack() {
        OffloadRate offload = OffloadRate.of(
                link(Place.CARD, "CARD-004", 1500),
                link(Place.READER, "READER-2", 1000),
                link(Place.DESTINATION, "ARRAY-1", 900),
                link(Place.DESTINATION, "SHUTTLE-02", 250));
        assertThat(offload.slowest().code()).isEqualTo("SHUTTLE-02");
        assertThat(offload.secondsFor(CARD)).isEqualTo(Fraction.of(4000));
    }

    @Test
    void ofEqualLinksTheFirstOnTheWayIsNamed() {
        OffloadRate offload = OffloadRate.of(link(Place.CARD, "CARD-004", 250), link(Place.DESTINATION, "D", 250));
        assertThat(offload.slowest().place()).isEqualTo(Place.CARD);
    }

    @Test
    void readBackAddsTheTimeOfItsOwnWay() {
        OffloadRate copying = OffloadRate.of(link(Place.READER, "R", 500));
        OffloadRate reading = OffloadRate.of(link(Place.DESTINATION, "D", 250));
        assertThat(copying.secondsWithReadBack(CARD, reading)).isEqualTo(Fraction.of(2000 + 4000));
    }

    @Test
    void refusesAWayThatPassesNothing() {
        assertThatIllegalArgumentException().isThrownBy(() -> link(Place.HOST, "H", 0));
        assertThatIllegalArgumentException().isThrownBy(OffloadRate::of);
    }

    @Test
    void anotherLinkNeverMakesItFaster() {
        long seed = 5L;
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 300; i++) {
            List<Link> links = new ArrayList<>(List.of(link(Place.CARD, "C", 1 + random.nextInt(3000))));
            OffloadRate before = new OffloadRate(links);
            links.add(link(Place.DESTINATION, "D", 1 + random.nextInt(3000)));
            assertThat(new OffloadRate(links).rate()).as("seed %d", seed).isLessThanOrEqualTo(before.rate());
        }
    }

    private static Link link(Place place, String code, long megabytesPerSecond) {
        return new Link(place, code, DataRate.ofBytesPerSecond(megabytesPerSecond * ByteUnit.MB.bytes()));
    }
}

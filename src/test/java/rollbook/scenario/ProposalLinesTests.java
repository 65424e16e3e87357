package rollbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Worked by hand from the figures of {@link TestFacts}: a small card €100 a week, a reader €50, a drive €600. */
class ProposalLinesTests {
    private static List<ProposalLine> lines(String... typed) {
        return ProposalLines.of(TestFacts.inputs(typed), TestFacts.EUR);
    }

    @Test
    void whatIsThereIsNotProposed() {
        assertThat(lines()).isEmpty();
        assertThat(lines("cards.small-512", "5")).as("fewer cards").isEmpty();
        assertThat(lines("way.READER-1", "ADAPTER-1", "write-rate.Shuttle", "300"))
                .isEmpty();
    }

    @Test
    void moreThanIsThereIsProposedWithWhatItCosts() {
        List<ProposalLine> lines =
                lines("cards.small-512", "9", "extra-readers", "2", "weeks", "3", "write-rate.Shuttle", "900");
        assertThat(lines)
                .containsExactly(
                        new ProposalLine(ProposalLine.Kind.CARDS, "small", 3, 3, 90_000L),
                        new ProposalLine(ProposalLine.Kind.READERS, "", 2, 3, 30_000L),
                        new ProposalLine(ProposalLine.Kind.DRIVES, "Shuttle", 1, null, 60_000L));
        assertThat(ProposalLines.cost(lines)).isEqualTo(180_000L);
    }

    @Test
    void aPartWithoutAPriceLeavesTheCostOpen() {
        List<ProposalLine> lines = lines("way.READER-2", "NEW", "cards.small-512", "7");
        assertThat(lines)
                .containsExactly(
                        new ProposalLine(ProposalLine.Kind.CARDS, "small", 1, 1, 10_000L),
                        new ProposalLine(ProposalLine.Kind.ADAPTERS, "", 1, 1, null));
        assertThat(ProposalLines.cost(lines)).isNull();
    }
}

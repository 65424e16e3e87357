package rollbook.scenario;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.quantity.Money;

/** What a scenario uses and the production doesn't own. */
final class ProposalLines {
    private final ScenarioInputs inputs;
    private final Money money;
    private final List<ProposalLine> lines = new ArrayList<>();

    private ProposalLines(ScenarioInputs inputs, Money money) {
        this.inputs = inputs;
        this.money = money;
    }

    /** @param money of the production */
    static List<ProposalLine> of(ScenarioInputs inputs, Money money) {
        ProposalLines proposal = new ProposalLines(inputs, money);
        proposal.find();
        return proposal.lines;
    }

    private void find() {
        for (DayFacts.CardType type : inputs.facts().cards()) {
            int more = inputs.number(Figure.CARDS.key(type.key())).intValueExact() - type.count();
            hire(ProposalLine.Kind.CARDS, type.model(), more, Figure.CARD_WEEK);
        }
        int readers = inputs.count(Figure.EXTRA_READERS);
        hire(ProposalLine.Kind.READERS, "", readers, Figure.READER_WEEK);
        int adapters = Math.toIntExact(inputs.facts().readers().stream()
                .filter(reader -> inputs.text(Figure.WAY.key(reader.code())).equals(Sheet.NEW))
                .count());
        hire(ProposalLine.Kind.ADAPTERS, "", adapters, Figure.ADAPTER_WEEK);
        for (DayFacts.Destination leg : inputs.facts().destinations()) {
            if (isFaster(leg)) {
                lines.add(new ProposalLine(
                        ProposalLine.Kind.DRIVES, leg.leg(), 1, null, inputs.money(Figure.DRIVE_PRICE, money)));
            }
        }
    }

    private boolean isFaster(DayFacts.Destination leg) {
        boolean used = !inputs.text(Figure.DESTINATION.key(leg.leg())).equals(Beginning.NO);
        BigDecimal rate = inputs.number(Figure.WRITE_RATE.key(leg.leg()));
        return used
                && leg.writeBytesPerSecond() != null
                && rate.compareTo(new BigDecimal(Beginning.megabytes(leg.writeBytesPerSecond()))) > 0;
    }

    private void hire(ProposalLine.Kind kind, String what, int count, Figure week) {
        if (count > 0) {
            int weeks = inputs.count(Figure.WEEKS);
            Long price = inputs.money(week, money);
            Long cost =
                    price == null ? null : Math.multiplyExact(Math.multiplyExact(price, (long) count), (long) weeks);
            lines.add(new ProposalLine(kind, what, count, weeks, cost));
        }
    }

    /** Null if the cost of one of them isn't known. */
    static @Nullable Long cost(List<ProposalLine> lines) {
        return lines.stream().anyMatch(line -> line.costMinorUnits() == null)
                ? null
                : lines.stream().mapToLong(ProposalLine::costMinorUnits).reduce(0, Math::addExact);
    }
}

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
            add(ProposalLine.Kind.CARDS, type.model(), more, hired(Figure.CARD_WEEK, more));
        }
        int readers = inputs.count(Figure.EXTRA_READERS);
        add(ProposalLine.Kind.READERS, "", readers, hired(Figure.READER_WEEK, readers));
        int adapters = Math.toIntExact(inputs.facts().readers().stream()
                .filter(reader -> inputs.text(Figure.WAY.key(reader.code())).equals(Sheet.NEW))
                .count());
        add(ProposalLine.Kind.ADAPTERS, "", adapters, hired(Figure.ADAPTER_WEEK, adapters));
        for (DayFacts.Destination leg : inputs.facts().destinations()) {
            if (isFaster(leg)) {
                add(ProposalLine.Kind.DRIVES, leg.leg(), 1, inputs.money(Figure.DRIVE_PRICE, money));
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

    private @Nullable Long hired(Figure week, int count) {
        Long price = inputs.money(week, money);
        return price == null
                ? null
                : Math.multiplyExact(Math.multiplyExact(price, (long) count), (long) inputs.count(Figure.WEEKS));
    }

    private void add(ProposalLine.Kind kind, String what, int count, @Nullable Long cost) {
        if (count > 0) {
            lines.add(new ProposalLine(kind, what, count, cost));
        }
    }

    /** Null if the cost of one of them isn't known. */
    static @Nullable Long cost(List<ProposalLine> lines) {
        return lines.stream().anyMatch(line -> line.costMinorUnits() == null)
                ? null
                : lines.stream().mapToLong(ProposalLine::costMinorUnits).reduce(0, Math::addExact);
    }
}

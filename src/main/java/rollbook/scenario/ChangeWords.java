package rollbook.scenario;

import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.production.Membership;
import rollbook.quantity.Money;
import rollbook.turnaround.BestSet;
import rollbook.turnaround.Change;
import rollbook.turnaround.Changes;
import rollbook.turnaround.DayPlan;
import rollbook.turnaround.Difference;
import rollbook.turnaround.Estimate;
import rollbook.turnaround.Proposal;
import rollbook.web.Display;

/** Tries what changes bring, and says it. */
@Component
class ChangeWords {
    private static final int REPLICATES = 100;
    /** What brings less isn’t worth a sentence. */
    private static final int WORTHWHILE_MINUTES = 5;

    private final Display display;

    ChangeWords(Display display) {
        this.display = display;
    }

    /** @param most a sentence on what helps most, or that nothing does */
    record Tried(TurnaroundPage.Help help, String most) {}

    Tried tried(ScenarioInputs inputs, DayPlan plan, DayNames names, Membership membership) {
        List<Tries.Try> tries = Tries.of(inputs, plan, Money.of(membership.currency()));
        int weeks = inputs.count(Figure.WEEKS);
        Changes changes =
                Changes.of(plan, tries.stream().map(Tries.Try::proposal).toList(), weeks, inputs.seed(), REPLICATES);
        List<TurnaroundPage.HelpRow> rows = new ArrayList<>();
        for (Changes.Effect effect : changes.effects()) {
            Tries.Try one = tries.stream()
                    .filter(candidate -> candidate.proposal() == effect.proposal())
                    .findFirst()
                    .orElseThrow();
            rows.add(row(effect, Tries.cost(one, weeks), names, membership));
        }
        Changes.Effect first = changes.effects().get(0);
        String most = isWorthwhile(first.difference())
                ? display.text(
                        "scenario.sentence.helps-most", change(first.proposal(), names), brings(first.difference()))
                : display.text("scenario.sentence.nothing-helps", WORTHWHILE_MINUTES);
        return new Tried(new TurnaroundPage.Help(rows, best(inputs, plan, tries, names, membership)), most);
    }

    private static boolean isWorthwhile(Difference difference) {
        return difference.helps()
                && Math.min(
                                difference.waitingMinutes().value(),
                                difference.lastProvenMinutes().value())
                        <= -WORTHWHILE_MINUTES;
    }

    private TurnaroundPage.HelpRow row(
            Changes.Effect effect, @Nullable Long cost, DayNames names, Membership membership) {
        Difference difference = effect.difference();
        return new TurnaroundPage.HelpRow(
                change(effect.proposal(), names),
                proven(difference.lastProvenMinutes()),
                range(difference.lastProvenMinutes()),
                waiting(difference.waitingMinutes()),
                range(difference.waitingMinutes()),
                cost == null
                        ? display.text("scenario.help.no-price")
                        : cost == 0 ? display.text("scenario.help.free") : money(cost, membership),
                difference.mayBeNothing());
    }

    private String best(
            ScenarioInputs inputs, DayPlan plan, List<Tries.Try> tries, DayNames names, Membership membership) {
        Long budget = inputs.money(Figure.BUDGET, Money.of(membership.currency()));
        if (budget == null) {
            return "";
        }
        List<Proposal> priced = tries.stream()
                .filter(Tries.Try::priced)
                .map(Tries.Try::proposal)
                .limit(BestSet.MOST_PROPOSALS)
                .toList();
        BestSet best = BestSet.of(plan, priced, budget, inputs.count(Figure.WEEKS), inputs.seed(), REPLICATES);
        return best.proposals().isEmpty()
                ? display.text("scenario.best.none", money(budget, membership))
                : display.text(
                        "scenario.best",
                        money(budget, membership),
                        best.proposals().stream()
                                .map(proposal -> change(proposal, names))
                                .collect(Collectors.joining(", ")),
                        brings(best.difference()),
                        money(best.costMinorUnits(), membership));
    }

    private String change(Proposal proposal, DayNames names) {
        Change change = proposal.change();
        if (change instanceof Change.MoreCards more) {
            return display.text("scenario.change.cards", names.model(more.cardType()));
        }
        if (change instanceof Change.OneMoreReader) {
            return display.text("scenario.change.reader");
        }
        if (change instanceof Change.OtherWay way) {
            return display.text(
                    "scenario.change.adapter",
                    names.of(way.reader()),
                    display.rate(way.way().rate().bytesPerSecond().floor()));
        }
        if (change instanceof Change.OtherSpeed speed) {
            return display.text(
                    "scenario.change.medium",
                    speed.destination(),
                    display.rate(speed.write().bytesPerSecond().floor()));
        }
        if (change instanceof Change.EncodingOn on) {
            return display.text("scenario.change.encoding-on", on.destination());
        }
        if (change instanceof Change.EncodingOff off) {
            return display.text("scenario.change.encoding-off", off.destination());
        }
        if (change instanceof Change.OtherReadBack later) {
            return display.text("scenario.change.read-back." + later.readBack().when());
        }
        return display.text("scenario.change.together");
    }

    /** 34 min earlier, 12 min less waiting. */
    private String brings(Difference difference) {
        List<String> parts = new ArrayList<>();
        if (difference.waitingMinutes().isLess()) {
            parts.add(display.text("scenario.brings.waiting", waiting(difference.waitingMinutes())));
        }
        if (!difference.lastProvenMinutes().mayBeNothing()) {
            parts.add(display.text("scenario.brings.proven", proven(difference.lastProvenMinutes())));
        }
        return String.join(", ", parts);
    }

    private String proven(Estimate minutes) {
        return signed(minutes, "scenario.help.earlier", "scenario.help.later");
    }

    private String waiting(Estimate minutes) {
        return signed(minutes, "scenario.help.less", "scenario.help.more");
    }

    private String signed(Estimate minutes, String less, String more) {
        return minutes.mayBeNothing()
                ? display.text("scenario.help.same")
                : display.text(minutes.value() < 0 ? less : more, oneDecimal(Math.abs(minutes.value())));
    }

    private String range(Estimate minutes) {
        String low = signed(minutes.low());
        String high = signed(minutes.high());
        return low.equals(high) ? "" : display.text("scenario.range", low, high);
    }

    private static String signed(double minutes) {
        long tenths = Math.round(minutes * 10);
        return (tenths < 0 ? "−" : tenths > 0 ? "+" : "") + oneDecimal(Math.abs(minutes));
    }

    /** Whole minutes from ten on, below with one decimal. */
    private static String oneDecimal(double minutes) {
        return minutes >= 9.95
                ? Long.toString(Math.round(minutes))
                : FigureKind.NUMBER.read(Double.toString(Math.round(minutes * 10) / 10.0));
    }

    private String money(long minorUnits, Membership membership) {
        return display.money(minorUnits, Currency.getInstance(membership.currency()));
    }
}

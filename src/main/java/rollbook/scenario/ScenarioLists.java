package rollbook.scenario;

import java.util.Currency;
import java.util.List;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;
import rollbook.production.Membership;
import rollbook.web.Display;

/** Prepares the lists of scenarios and of proposals. */
@Component
class ScenarioLists {
    private final TurnaroundPages pages;
    private final Display display;

    ScenarioLists(TurnaroundPages pages, Display display) {
        this.pages = pages;
        this.display = display;
    }

    /** @param day what it is about, in words */
    record ScenarioRow(Scenario scenario, String day, String additions) {}

    /** @param open whether it waits for an answer */
    record ProposalRow(OrderProposal proposal, List<String> lines, String cost, String neededBy, boolean open) {}

    void describe(List<Scenario> all, Membership membership, Model model) {
        List<ScenarioRow> kept = rows(all, false, membership);
        model.addAttribute("scenarios", kept);
        model.addAttribute("archived", rows(all, true, membership));
        model.addAttribute(
                "sentence",
                kept.isEmpty()
                        ? display.text("scenario.list.sentence.none")
                        : display.text("scenario.list.sentence", kept.size()));
    }

    private List<ScenarioRow> rows(List<Scenario> all, boolean archived, Membership membership) {
        return all.stream()
                .filter(scenario -> scenario.archived() == archived)
                .map(scenario -> new ScenarioRow(
                        scenario,
                        display.text(
                                "scenario.day-link",
                                scenario.inputs().facts().dayNumber(),
                                scenario.inputs().facts().unitName(),
                                display.shortDate(scenario.inputs().facts().date())),
                        String.join("; ", pages.additions(scenario.inputs(), membership))))
                .toList();
    }

    void describeProposals(List<OrderProposal> all, Membership membership, Model model) {
        long open = all.stream().filter(ScenarioLists::isOpen).count();
        model.addAttribute(
                "proposals",
                all.stream().map(proposal -> row(proposal, membership)).toList());
        model.addAttribute(
                "sentence",
                open == 0
                        ? display.text("scenario.proposals.sentence.none")
                        : display.text("scenario.proposals.sentence", open));
    }

    private ProposalRow row(OrderProposal proposal, Membership membership) {
        return new ProposalRow(
                proposal,
                proposal.lines().stream()
                        .map(line -> pages.addition(line, membership))
                        .toList(),
                proposal.costMinorUnits() == null
                        ? display.text("scenario.cost-unknown")
                        : display.money(proposal.costMinorUnits(), Currency.getInstance(membership.currency())),
                display.shortDate(proposal.neededBy()),
                isOpen(proposal));
    }

    private static boolean isOpen(OrderProposal proposal) {
        return proposal.state() == OrderProposal.State.PROPOSED;
    }
}

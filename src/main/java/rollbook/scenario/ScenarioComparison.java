package rollbook.scenario;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.springframework.stereotype.Component;
import rollbook.production.Membership;
import rollbook.web.Display;

/** Sets scenarios side by side: what differs in their inputs, then what they tell. */
@Component
class ScenarioComparison {
    private final SheetWords words;
    private final AnswerPages answers;
    private final TurnaroundPages pages;
    private final Display display;

    ScenarioComparison(SheetWords words, AnswerPages answers, TurnaroundPages pages, Display display) {
        this.words = words;
        this.answers = answers;
        this.pages = pages;
        this.display = display;
    }

    /** @param cells one for each scenario, in their order */
    record Row(String label, List<String> cells) {}

    /** @param alike how many inputs are the same in all of them */
    record Table(List<Row> inputs, int alike, List<Row> answers) {}

    Table of(List<Scenario> scenarios, Membership membership) {
        Set<String> keys = new LinkedHashSet<>();
        Map<String, Row> rows = new LinkedHashMap<>();
        for (Figure figure : Figure.values()) {
            scenarios.forEach(scenario -> scenario.inputs().values().keySet().stream()
                    .filter(key -> figure.isOf(key))
                    .forEach(keys::add));
            for (String key : keys) {
                if (figure.isOf(key)) {
                    rows.put(key, row(figure, key, scenarios, membership));
                }
            }
        }
        List<Row> differing = new ArrayList<>(dayRow(scenarios));
        rows.values().stream()
                .filter(row -> row.cells().stream().distinct().count() > 1)
                .forEach(differing::add);
        int alike = rows.size()
                - (int) rows.values().stream()
                        .filter(row -> row.cells().stream().distinct().count() > 1)
                        .count();
        return new Table(differing, alike, answers(scenarios, membership));
    }

    /** Which day each is about, if it isn't the same. */
    private List<Row> dayRow(List<Scenario> scenarios) {
        List<String> days = scenarios.stream()
                .map(scenario -> scenario.inputs().facts())
                .map(facts -> display.text(
                        "scenario.day-link", facts.dayNumber(), facts.unitName(), display.shortDate(facts.date())))
                .toList();
        return days.stream().distinct().count() > 1
                ? List.of(new Row(display.text("scenario.compare.day"), days))
                : List.of();
    }

    private Row row(Figure figure, String key, List<Scenario> scenarios, Membership membership) {
        DayFacts first = scenarios.get(0).inputs().facts();
        String thing =
                key.equals(figure.key()) ? "" : key.substring(figure.key().length() + 1);
        return new Row(
                words.label(first, figure, thing, membership.currency()),
                scenarios.stream()
                        .map(scenario -> words.value(
                                scenario.inputs().facts(),
                                figure,
                                scenario.inputs().values().getOrDefault(key, "")))
                        .toList());
    }

    private List<Row> answers(List<Scenario> scenarios, Membership membership) {
        List<AnswerPages.Brief> briefs = scenarios.stream()
                .map(scenario -> answers.brief(scenario.inputs()))
                .toList();
        return List.of(
                new Row(
                        display.text("scenario.compare.sentence"),
                        briefs.stream().map(AnswerPages.Brief::sentence).toList()),
                new Row(
                        display.text("scenario.compare.waiting"),
                        briefs.stream().map(AnswerPages.Brief::waiting).toList()),
                new Row(
                        display.text("scenario.compare.proven"),
                        briefs.stream().map(AnswerPages.Brief::proven).toList()),
                new Row(
                        display.text("scenario.compare.overtime"),
                        briefs.stream().map(AnswerPages.Brief::overtime).toList()),
                new Row(
                        display.text("scenario.compare.chance"),
                        briefs.stream().map(AnswerPages.Brief::chance).toList()),
                new Row(
                        display.text("scenario.compare.additions"),
                        scenarios.stream()
                                .map(scenario -> additions(scenario, membership))
                                .toList()));
    }

    private String additions(Scenario scenario, Membership membership) {
        List<String> additions = pages.additions(scenario.inputs(), membership);
        return additions.isEmpty() ? display.text("scenario.additions.none") : String.join("; ", additions);
    }
}

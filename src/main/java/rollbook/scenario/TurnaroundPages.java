package rollbook.scenario;

import java.time.LocalDate;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.ModelAndView;
import rollbook.production.Membership;
import rollbook.quantity.Money;
import rollbook.schedule.ShootingDay;
import rollbook.web.Display;
import rollbook.web.Link;

/** Prepares the page of a day that is played through. */
@Component
class TurnaroundPages {
    private static final int OTHER_DAYS = 2;

    private final SheetWords sheetWords;
    private final AnswerPages answers;
    private final Display display;

    TurnaroundPages(SheetWords sheetWords, AnswerPages answers, Display display) {
        this.sheetWords = sheetWords;
        this.answers = answers;
        this.display = display;
    }

    ModelAndView nothing(Missing missing, DayFactsReading.Found found, Membership membership) {
        return new ModelAndView("scenario/nothing")
                .addObject("missing", missing)
                .addObject("first", firstStep(missing, found, membership))
                .addObject("days", days(found, membership));
    }

    private static String firstStep(Missing missing, DayFactsReading.Found found, Membership membership) {
        return switch (missing) {
            case DAY -> membership.path("days");
            case CAMERAS ->
                membership.path(
                        "days/" + (found.chosen() == null ? "" : found.chosen().dayId()));
            case DESTINATIONS -> membership.path("settings");
            default -> membership.path("media");
        };
    }

    ModelAndView play(Sheet sheet, DayFactsReading.Found found, Membership membership) {
        return play(sheet, days(found, membership), title(sheet.facts()), membership)
                .addObject("dayId", sheet.facts().dayId())
                .addObject("name", new ScenarioName(proposedName(sheet.facts()), null));
    }

    ModelAndView kept(Scenario scenario, Sheet sheet, Membership membership) {
        return play(sheet, List.of(), scenario.name(), membership)
                .addObject("scenario", scenario)
                .addObject("name", new ScenarioName(scenario.name(), null));
    }

    private ModelAndView play(Sheet sheet, List<Link> days, String title, Membership membership) {
        TurnaroundPage.Answers answered = sheet.isRight() ? answers.of(ScenarioDrafts.inputs(sheet), membership) : null;
        TurnaroundPage page = new TurnaroundPage(
                title,
                tonight(sheet.facts()),
                days,
                sheetWords.page(sheet, membership.currency()),
                answered,
                sheet.lines(),
                sheet.lines().stream().anyMatch(SheetLine::isChanged),
                sheet.isRight() ? additions(ScenarioDrafts.inputs(sheet), membership) : List.of());
        ModelAndView view = new ModelAndView("scenario/turnaround")
                .addObject("page", page)
                .addObject(
                        "sentence", answered == null ? display.text("scenario.sentence.wrong") : answered.sentence());
        if (!sheet.isRight()) {
            view.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
            view.addObject("invalid", true);
        }
        return view;
    }

    private String title(DayFacts facts) {
        return display.text("scenario.title", facts.dayNumber(), facts.unitName(), display.shortDate(facts.date()));
    }

    private String proposedName(DayFacts facts) {
        return display.text("scenario.proposed-name", facts.dayNumber(), facts.unitName());
    }

    private String tonight(DayFacts facts) {
        DayFacts.Tonight tonight = facts.tonight();
        return tonight == null
                ? ""
                : display.text(
                        "scenario.tonight",
                        tonight.now(),
                        tonight.rolls(),
                        tonight.exposed().size(),
                        tonight.cards().stream()
                                .map(some -> display.text(
                                        "scenario.tonight.cards",
                                        some.cards(),
                                        display.text("web.card-state." + some.state())))
                                .collect(Collectors.joining(", ")));
    }

    /** Of each date one day: those of other units take part in it. */
    private List<Link> days(DayFactsReading.Found found, Membership membership) {
        LocalDate shown = found.chosen() == null ? null : found.chosen().date();
        Map<LocalDate, ShootingDay> byDate = new LinkedHashMap<>();
        found.open().forEach(day -> byDate.putIfAbsent(day.date(), day));
        return byDate.values().stream()
                .filter(day -> !day.date().equals(shown))
                .limit(OTHER_DAYS)
                .map(day -> new Link(
                        membership.path("turnaround?day=" + day.id()),
                        display.text("scenario.day-link", day.number(), day.unitName(), display.shortDate(day.date()))))
                .toList();
    }

    List<String> additions(ScenarioInputs inputs, Membership membership) {
        return ProposalLines.of(inputs, Money.of(membership.currency())).stream()
                .map(line -> addition(line, membership))
                .toList();
    }

    String addition(ProposalLine line, Membership membership) {
        return line.costMinorUnits() == null
                ? display.text("scenario.addition." + line.kind(), line.count(), line.what())
                : display.text(
                        "scenario.addition.cost",
                        display.text("scenario.addition." + line.kind(), line.count(), line.what()),
                        display.money(line.costMinorUnits(), Currency.getInstance(membership.currency())));
    }
}

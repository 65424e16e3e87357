package rollbook.scenario;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import rollbook.web.Choice;
import rollbook.web.Display;

/** Puts the form of a scenario into words: labels, choices, and where each figure comes from. */
@Component
class SheetWords {
    private final Display display;

    SheetWords(Display display) {
        this.display = display;
    }

    SheetPage page(Sheet sheet, String currency) {
        List<SheetPage.Part> parts = Arrays.stream(Figure.Group.values())
                .map(group -> new SheetPage.Part(
                        display.text("scenario.group." + group),
                        display.text("scenario.group.hint." + group),
                        sheet.lines().stream()
                                .filter(line -> line.figure().group == group)
                                .map(line -> field(sheet.facts(), line, currency))
                                .toList()))
                .toList();
        List<SheetPage.Problem> problems = parts.stream()
                .flatMap(part -> part.fields().stream())
                .flatMap(field -> field.error() == null
                        ? Stream.empty()
                        : Stream.of(new SheetPage.Problem(
                                field.id(), display.text("web.error.line", field.label(), field.error()))))
                .toList();
        return new SheetPage(parts, problems);
    }

    private SheetPage.Field field(DayFacts facts, SheetLine line, String currency) {
        SheetLine.Problem problem = line.problem();
        return new SheetPage.Field(
                line.name(),
                line.id(),
                label(facts, line.figure(), line.thing(), currency),
                hint(facts, line),
                line.value(),
                line.figure().kind.inputMode(),
                line.figure().kind != FigureKind.CHOICE
                        ? null
                        : line.choices().stream()
                                .map(choice -> new Choice(choice, choice(facts, line.figure(), choice)))
                                .toList(),
                problem == null
                        ? null
                        : display.text(problem.key(), problem.args().toArray()));
    }

    String label(DayFacts facts, Figure figure, String thing, String currency) {
        return display.text("scenario.figure." + figure, thing(facts, figure, thing), currency);
    }

    /** A figure's value as it is read: a choice by its words. */
    String value(DayFacts facts, Figure figure, String value) {
        return figure.kind == FigureKind.CHOICE
                ? choice(facts, figure, value)
                : value.isEmpty() ? display.text("scenario.nothing-said") : value;
    }

    private static String thing(DayFacts facts, Figure figure, String thing) {
        return figure == Figure.CARDS ? model(facts, thing) : thing;
    }

    private static String model(DayFacts facts, String key) {
        return facts.cards().stream()
                .filter(type -> type.key().equals(key))
                .findFirst()
                .map(DayFacts.CardType::model)
                .orElse(key);
    }

    private String choice(DayFacts facts, Figure figure, String choice) {
        return switch (figure) {
            case CARD_TYPE -> model(facts, choice);
            case WAY ->
                List.of(Beginning.DIRECT, Sheet.NEW, Sheet.OFF).contains(choice)
                        ? display.text("scenario.way." + choice)
                        : display.text("scenario.way.through", choice);
            case READER_DIES -> choice.isEmpty() ? display.text("scenario.choice.none") : choice;
            default -> display.text("scenario.choice." + choice);
        };
    }

    private String hint(DayFacts facts, SheetLine line) {
        Begun begun = line.begun();
        String measured = measured(facts, line);
        if (!measured.isEmpty()) {
            return measured;
        }
        String origin = begun.value().isEmpty() && begun.origin() == Begun.Origin.USUAL
                ? display.text("scenario.origin.empty")
                : display.text("scenario.origin." + begun.origin(), begun.source());
        return line.isChanged()
                ? display.text("scenario.origin.changed", value(facts, line.figure(), begun.value()), origin)
                : origin;
    }

    /** Of a reader that the show's sessions went through as it is used here; empty for all else. */
    private String measured(DayFacts facts, SheetLine line) {
        return line.figure() != Figure.WAY
                ? ""
                : facts.measuredWays().stream()
                        .filter(way -> way.reader().equals(line.thing())
                                && line.value().equals(way.adapter() == null ? Beginning.DIRECT : way.adapter()))
                        .map(way -> display.text(
                                "scenario.origin.measured-way",
                                display.rate(way.bytesPerSecond()),
                                model(facts, way.cardType()),
                                way.sessions()))
                        .collect(Collectors.joining(" "));
    }
}

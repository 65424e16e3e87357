package rollbook.scenario;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import rollbook.quantity.Money;

/** The form of a scenario: all figures of a day, with what was typed and what is wrong with it. */
record Sheet(DayFacts facts, List<SheetLine> lines) {
    static final String NEW = "NEW";
    static final String OFF = "OFF";

    Sheet {
        lines = List.copyOf(lines);
    }

    /**
     * @param begun what the form begins with
     * @param typed what was sent; a figure that wasn't is as it began
     */
    static Sheet of(DayFacts facts, Map<String, Begun> begun, Map<String, String> typed, Money money) {
        List<SheetLine> lines = new ArrayList<>();
        for (List<Figure> together : askedTogether()) {
            for (String thing : things(together.get(0), facts)) {
                for (Figure figure : together) {
                    String name = thing.isEmpty() ? figure.key() : figure.key(thing);
                    Begun first = begun.getOrDefault(name, new Begun(figure.usual, Begun.Origin.USUAL, ""));
                    lines.add(line(
                            figure,
                            thing,
                            name,
                            "figure-" + lines.size(),
                            first,
                            typed.getOrDefault(name, first.value()),
                            choices(figure, facts),
                            money));
                }
            }
        }
        return new Sheet(facts, SheetChecks.check(facts, lines));
    }

    /** What is asked of the same things one after another stands thing by thing. */
    private static List<List<Figure>> askedTogether() {
        List<List<Figure>> runs = new ArrayList<>();
        for (Figure figure : Figure.values()) {
            List<Figure> last = runs.isEmpty() ? List.of() : runs.get(runs.size() - 1);
            if (figure.ofEach() && !last.isEmpty() && last.get(0).each() == figure.each()) {
                last.add(figure);
            } else {
                runs.add(new ArrayList<>(List.of(figure)));
            }
        }
        return runs;
    }

    private static List<String> things(Figure figure, DayFacts facts) {
        return switch (figure.each()) {
            case CAMERA -> facts.cameras().stream().map(DayFacts.Camera::letter).toList();
            case CARD_TYPE -> facts.cards().stream().map(DayFacts.CardType::key).toList();
            case READER -> facts.readers().stream().map(DayFacts.Reader::code).toList();
            case LEG ->
                facts.destinations().stream().map(DayFacts.Destination::leg).toList();
            case DAY -> List.of("");
        };
    }

    private static List<String> choices(Figure figure, DayFacts facts) {
        return switch (figure) {
            case AT_BREAKS -> List.of(Beginning.YES, Beginning.NO);
            case CARD_TYPE -> facts.cards().stream().map(DayFacts.CardType::key).toList();
            case WAY ->
                Stream.of(
                                Stream.of(Beginning.DIRECT),
                                facts.adapters().stream().map(DayFacts.Adapter::code),
                                Stream.of(NEW, OFF))
                        .flatMap(choice -> choice)
                        .toList();
            case DESTINATION -> List.of(Beginning.AS_RECORDED, Beginning.ENCODED, Beginning.NO);
            case WRITING, READ_BACK_ORDER -> List.of("TOGETHER", "ONE_AFTER_ANOTHER");
            case READ_BACK -> List.of("READER_FREE", "HOLDING_READER", "AFTER_WRAP", "NEVER");
            case READER_DIES ->
                Stream.concat(Stream.of(""), facts.readers().stream().map(DayFacts.Reader::code))
                        .toList();
            default -> List.of();
        };
    }

    private static SheetLine line(
            Figure figure,
            String thing,
            String name,
            String id,
            Begun begun,
            String typed,
            List<String> choices,
            Money money) {
        SheetLine line = new SheetLine(name, id, figure, thing, typed.strip(), begun, choices, null);
        if (line.value().isEmpty()) {
            return figure.mayBeEmpty() ? line : line.wrong(SheetLine.Problem.of("NotBlank"));
        }
        String read;
        try {
            read = figure.kind.read(typed);
        } catch (IllegalArgumentException | ArithmeticException unreadable) {
            return line.wrong(SheetLine.Problem.of(figure.kind.problem()));
        }
        if (figure.kind == FigureKind.CHOICE && !choices.contains(read)) {
            return line.wrong(SheetLine.Problem.of(figure.kind.problem()));
        }
        if (figure.kind == FigureKind.MONEY && !money.canPay(new BigDecimal(read))) {
            return line.wrong(SheetLine.Problem.of("scenario.wrong.money", money.digits()));
        }
        return inBounds(new SheetLine(name, id, figure, thing, read, begun, choices, null));
    }

    private static SheetLine inBounds(SheetLine line) {
        if (!List.of(FigureKind.NUMBER, FigureKind.COUNT, FigureKind.MONEY).contains(line.figure().kind)) {
            return line;
        }
        double number = Double.parseDouble(line.value());
        Figure figure = line.figure();
        return number < figure.least || number > figure.most
                ? line.wrong(SheetLine.Problem.of("scenario.wrong.bounds", figure.least, figure.most))
                : line;
    }

    boolean isRight() {
        return lines.stream().noneMatch(SheetLine::isWrong);
    }

    /** What is kept: of a right sheet, all that isn't empty. */
    Map<String, String> values() {
        Map<String, String> values = new LinkedHashMap<>();
        lines.stream().filter(line -> !line.value().isEmpty()).forEach(line -> values.put(line.name(), line.value()));
        return values;
    }
}

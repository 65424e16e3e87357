package rollbook.scenario;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/** What figures of a form, each right in itself, must be together. */
final class SheetChecks {
    private final DayFacts facts;
    private final List<SheetLine> lines;

    private SheetChecks(DayFacts facts, List<SheetLine> lines) {
        this.facts = facts;
        this.lines = new ArrayList<>(lines);
    }

    static List<SheetLine> check(DayFacts facts, List<SheetLine> lines) {
        SheetChecks checks = new SheetChecks(facts, lines);
        if (lines.stream().noneMatch(SheetLine::isWrong)) {
            checks.check();
        }
        return checks.lines;
    }

    private void check() {
        WorkHours hours = WorkHours.of(value(Figure.CALL.key()), value(Figure.WRAP.key()), value(Figure.BREAKS.key()));
        if (hours.workMinutes() <= 0) {
            reject(line -> line.figure() == Figure.WRAP, "scenario.wrong.no-time");
        } else {
            reject(
                    line -> line.figure() == Figure.MINUTES
                            && Double.parseDouble(line.value()) > hours.workMinutes() * WorkHours.MOST_RECORDED,
                    "scenario.wrong.too-many-minutes",
                    Math.floor(hours.workMinutes() * WorkHours.MOST_RECORDED));
        }
        rejectFirstUnlessAny(Figure.MINUTES, line -> Double.parseDouble(line.value()) > 0, "scenario.wrong.no-camera");
        facts.cameras().stream()
                .filter(camera -> Double.parseDouble(value(Figure.MINUTES.key(camera.letter()))) > 0)
                .map(camera -> Figure.CARDS.key(value(Figure.CARD_TYPE.key(camera.letter()))))
                .distinct()
                .filter(cards -> value(cards).equals("0"))
                .forEach(cards -> reject(line -> line.name().equals(cards), "scenario.wrong.no-card"));
        boolean moreReaders = !value(Figure.EXTRA_READERS.key()).equals("0");
        rejectFirstUnlessAny(
                Figure.WAY, line -> moreReaders || !line.value().equals(Sheet.OFF), "scenario.wrong.no-reader");
        rejectFirstUnlessAny(
                Figure.DESTINATION, line -> !line.value().equals(Beginning.NO), "scenario.wrong.no-destination");
        encoder();
        if (value(Figure.READER_DIES.key()).isEmpty()
                != value(Figure.DIES_AT.key()).isEmpty()) {
            reject(
                    line -> (line.figure() == Figure.READER_DIES || line.figure() == Figure.DIES_AT)
                            && line.value().isEmpty(),
                    "scenario.wrong.half-said");
        }
    }

    /** Whoever encodes says how fast, in bytes or in frames. */
    private void encoder() {
        boolean encodes = lines.stream()
                .anyMatch(line ->
                        line.figure() == Figure.DESTINATION && line.value().equals(Beginning.ENCODED));
        boolean byBytes = !value(Figure.ENCODER.key()).isEmpty();
        boolean byFrames = !value(Figure.ENCODER_FRAMES.key()).isEmpty();
        if (encodes && !byBytes && !byFrames) {
            reject(line -> line.figure() == Figure.ENCODER, "scenario.wrong.no-encoder");
        } else if (byBytes && byFrames) {
            reject(line -> line.figure() == Figure.ENCODER_FRAMES, "scenario.wrong.two-encoders");
        }
    }

    private String value(String name) {
        return lines.stream()
                .filter(line -> line.name().equals(name))
                .map(SheetLine::value)
                .findFirst()
                .orElse("");
    }

    private void rejectFirstUnlessAny(Figure figure, Predicate<SheetLine> good, String key) {
        List<SheetLine> asked =
                lines.stream().filter(line -> line.figure() == figure).toList();
        if (!asked.isEmpty() && asked.stream().noneMatch(good)) {
            reject(line -> line.name().equals(asked.get(0).name()), key);
        }
    }

    private void reject(Predicate<SheetLine> which, String key, Object... args) {
        lines.replaceAll(line -> which.test(line) ? line.wrong(SheetLine.Problem.of(key, args)) : line);
    }
}

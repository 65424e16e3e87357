package rollbook.scenario;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rollbook.quantity.DataRate;
import rollbook.turnaround.Break;
import rollbook.turnaround.CameraShift;
import rollbook.turnaround.CardStock;
import rollbook.turnaround.DayPlan;
import rollbook.turnaround.Delay;
import rollbook.turnaround.Destination;
import rollbook.turnaround.Encoder;
import rollbook.turnaround.Mishap;
import rollbook.turnaround.Order;
import rollbook.turnaround.PullRule;
import rollbook.turnaround.ReadBack;
import rollbook.turnaround.Reader;
import rollbook.turnaround.Runner;
import rollbook.turnaround.Spread;
import rollbook.turnaround.Station;
import rollbook.turnaround.Takes;
import rollbook.turnaround.Way;

/** Makes a day to be played from the inputs of a scenario. All cameras work the same hours and share one station. */
final class DayPlans {
    static final String STATION = "station";
    /** Readers that the production doesn't have are numbered from one. */
    static final String EXTRA_READER = "+";

    private static final double PER_CENT = 100;
    private static final long MINUTE = 60_000;
    static final int MB_DIGITS = 6;
    /** Where nobody knows how fast cards, readers or media are, in bytes per second. */
    private static final long UNKNOWN =
            new BigDecimal(Beginning.USUAL_RATE).movePointRight(MB_DIGITS).longValueExact();

    private final ScenarioInputs inputs;
    private final DayFacts facts;
    private final WorkHours hours;

    private DayPlans(ScenarioInputs inputs) {
        this.inputs = inputs;
        this.facts = inputs.facts();
        String breaks = inputs.values().getOrDefault(Figure.BREAKS.key(), "");
        this.hours = WorkHours.of(inputs.text(Figure.CALL), inputs.text(Figure.WRAP), breaks);
    }

    /** @throws IllegalArgumentException if the inputs make no day; a {@link Sheet} that is right always makes one */
    static DayPlan of(ScenarioInputs inputs) {
        return new DayPlans(inputs).plan();
    }

    private DayPlan plan() {
        return new DayPlan(cameras(), cards(), runner(), List.of(station()), mishaps());
    }

    private List<CameraShift> cameras() {
        List<CameraShift> shifts = new ArrayList<>();
        for (DayFacts.Camera camera : facts.cameras()) {
            double minutes = inputs.number(Figure.MINUTES.key(camera.letter())).doubleValue();
            if (minutes > 0) {
                shifts.add(shift(camera, minutes));
            }
        }
        return shifts;
    }

    private CameraShift shift(DayFacts.Camera camera, double minutes) {
        return new CameraShift(
                camera.letter(),
                STATION,
                inputs.text(Figure.CARD_TYPE.key(camera.letter())),
                DataRate.ofBytesPerSecond(camera.bytesPerSecond()),
                camera.framesPerSecond(),
                hours.callMinutes() * MINUTE,
                hours.wrapMinutes() * MINUTE,
                hours.breaks().stream()
                        .map(span -> new Break(span.fromMinutes() * MINUTE, span.toMinutes() * MINUTE))
                        .toList(),
                Takes.of(
                        minutes * 60 / hours.workMinutes(),
                        inputs.number(Figure.TAKE),
                        spread(inputs.number(Figure.TAKE_SPREAD))),
                new PullRule(
                        inputs.number(Figure.FILL) / PER_CENT,
                        inputs.text(Figure.AT_BREAKS).equals(Beginning.YES)),
                delay(Figure.CHANGE));
    }

    private List<CardStock> cards() {
        return facts.cards().stream()
                .map(type -> new CardStock(
                        type.key(),
                        type.capacityBytes(),
                        inputs.number(Figure.CARDS.key(type.key())).intValueExact()))
                .toList();
    }

    private Runner runner() {
        return new Runner(
                delay(Figure.WALK),
                inputs.count(Figure.BATCH),
                millis(inputs.number(Figure.LONGEST_WAIT)),
                delay(Figure.BACK));
    }

    private Station station() {
        return new Station(
                STATION,
                readers(),
                rate(Figure.BUS),
                encoder(),
                facts.destinations().stream()
                        .map(this::destination)
                        .filter(Objects::nonNull)
                        .toList(),
                Order.valueOf(inputs.text(Figure.WRITING)),
                new ReadBack(
                        ReadBack.When.valueOf(inputs.text(Figure.READ_BACK)),
                        Order.valueOf(inputs.text(Figure.READ_BACK_ORDER))),
                delay(Figure.HANDLING),
                delay(Figure.CLEARING),
                spread(inputs.number(Figure.WORK_SPREAD)),
                inputs.number(Figure.REPEAT_CHANCE) / PER_CENT);
    }

    private List<Reader> readers() {
        List<Reader> readers = new ArrayList<>();
        for (DayFacts.Reader reader : facts.readers()) {
            String way = inputs.text(Figure.WAY.key(reader.code()));
            if (!way.equals(Sheet.OFF)) {
                readers.add(new Reader(reader.code(), ways(reader, way)));
            }
        }
        DayFacts.Reader fastest = facts.readers().stream()
                .max(Comparator.comparingLong(reader -> known(reader.readBytesPerSecond())))
                .orElse(new DayFacts.Reader("", null, null));
        for (int number = 1; number <= inputs.count(Figure.EXTRA_READERS); number++) {
            readers.add(new Reader(EXTRA_READER + number, ways(fastest, Beginning.DIRECT)));
        }
        return readers;
    }

    private List<Way> ways(DayFacts.Reader reader, String way) {
        return facts.cards().stream().map(type -> way(type, reader, way)).toList();
    }

    /** As fast as it was measured, else as the slowest of card, reader and adapter; a new adapter takes the reader's place on the way. */
    private Way way(DayFacts.CardType type, DayFacts.Reader reader, String way) {
        long card = type.readBytesPerSecond() == null ? Long.MAX_VALUE : type.readBytesPerSecond();
        if (way.equals(Sheet.NEW)) {
            String adapter = Sheet.NEW + " " + reader.code();
            return new Way(
                    type.key(), adapter, DataRate.ofBytesPerSecond(Math.min(card, bytes(Figure.NEW_ADAPTER.key()))));
        }
        String adapter = way.equals(Beginning.DIRECT) ? null : way;
        long stated = Math.min(card, Math.min(known(reader.readBytesPerSecond()), passes(adapter)));
        return new Way(
                type.key(),
                adapter,
                DataRate.ofBytesPerSecond(measured(type, reader, adapter).orElse(stated)));
    }

    private long passes(@Nullable String adapter) {
        return facts.adapters().stream()
                .filter(candidate -> candidate.code().equals(adapter))
                .findFirst()
                .map(DayFacts.Adapter::readBytesPerSecond)
                .orElse(Long.MAX_VALUE);
    }

    private Optional<Long> measured(DayFacts.CardType type, DayFacts.Reader reader, @Nullable String adapter) {
        return facts.measuredWays().stream()
                .filter(way -> way.reader().equals(reader.code())
                        && way.cardType().equals(type.key())
                        && Objects.equals(way.adapter(), adapter))
                .findFirst()
                .map(DayFacts.MeasuredWay::bytesPerSecond);
    }

    private static long known(@Nullable Long bytesPerSecond) {
        return bytesPerSecond == null ? UNKNOWN : bytesPerSecond;
    }

    private @Nullable Destination destination(DayFacts.Destination leg) {
        String use = inputs.text(Figure.DESTINATION.key(leg.leg()));
        if (use.equals(Beginning.NO)) {
            return null;
        }
        DataRate write = DataRate.ofBytesPerSecond(bytes(Figure.WRITE_RATE.key(leg.leg())));
        DataRate read = readRate(leg, write);
        return use.equals(Beginning.ENCODED)
                ? new Destination(leg.leg(), write, read, true, inputs.number(Figure.KEPT) / PER_CENT)
                : Destination.asRecorded(leg.leg(), write, read);
    }

    /** What is tried with a faster medium reads back no slower than it writes. */
    private DataRate readRate(DayFacts.Destination leg, DataRate write) {
        DataRate read = leg.readBytesPerSecond() == null ? write : DataRate.ofBytesPerSecond(leg.readBytesPerSecond());
        boolean faster = leg.writeBytesPerSecond() != null
                && write.compareTo(DataRate.ofBytesPerSecond(leg.writeBytesPerSecond())) > 0;
        return faster && read.compareTo(write) < 0 ? write : read;
    }

    private @Nullable Encoder encoder() {
        BigDecimal frames = inputs.maybe(Figure.ENCODER_FRAMES);
        if (frames != null) {
            return new Encoder.ByFrames(frames.doubleValue());
        }
        DataRate rate = rate(Figure.ENCODER);
        return rate == null ? null : new Encoder.ByBytes(rate);
    }

    private List<Mishap> mishaps() {
        Stream<Mishap> repeat =
                Stream.ofNullable(inputs.maybe(Figure.REPEAT)).map(number -> new Mishap.Repeat(number.intValueExact()));
        String reader = inputs.values().get(Figure.READER_DIES.key());
        String at = inputs.values().get(Figure.DIES_AT.key());
        boolean inUse = reader != null && !inputs.text(Figure.WAY.key(reader)).equals(Sheet.OFF);
        Stream<Mishap> dies =
                !inUse || at == null ? Stream.empty() : Stream.of(new Mishap.ReaderDies(reader, hours.at(at) * MINUTE));
        return Stream.concat(repeat, dies).toList();
    }

    private @Nullable DataRate rate(Figure figure) {
        return inputs.maybe(figure) == null ? null : DataRate.ofBytesPerSecond(bytes(figure.key()));
    }

    private long bytes(String key) {
        return inputs.number(key).movePointRight(MB_DIGITS).longValue();
    }

    private Delay delay(Figure figure) {
        return Delay.fixed(millis(inputs.number(figure)));
    }

    private static long millis(double minutes) {
        return Math.round(minutes * MINUTE);
    }

    private static Spread spread(double percent) {
        return percent == 0 ? Spread.NONE : new Spread.LogNormal(percent / PER_CENT);
    }
}

package rollbook.scenario;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rollbook.quantity.DataRate;
import rollbook.quantity.Fraction;
import rollbook.quantity.Money;
import rollbook.turnaround.CameraShift;
import rollbook.turnaround.Change;
import rollbook.turnaround.DayPlan;
import rollbook.turnaround.Destination;
import rollbook.turnaround.Encoder;
import rollbook.turnaround.Order;
import rollbook.turnaround.Proposal;
import rollbook.turnaround.ReadBack;
import rollbook.turnaround.Reader;
import rollbook.turnaround.Station;
import rollbook.turnaround.Way;

/** The changes worth trying on a day: what more could be had, and what could be done otherwise. */
final class Tries {
    private final ScenarioInputs inputs;
    private final DayPlan plan;
    private final Station station;
    private final Money money;
    private final List<Try> tries = new ArrayList<>();

    /** @param priced whether its price is known; without, its cost counts as nothing */
    record Try(Proposal proposal, boolean priced) {}

    private Tries(ScenarioInputs inputs, DayPlan plan, Money money) {
        this.inputs = inputs;
        this.plan = plan;
        this.station = plan.stations().get(0);
        this.money = money;
    }

    static List<Try> of(ScenarioInputs inputs, DayPlan plan, Money money) {
        Tries tries = new Tries(inputs, plan, money);
        tries.find();
        return tries.tries;
    }

    private void find() {
        cardTypes().forEach(type -> hired(new Change.MoreCards(type, 1), Figure.CARD_WEEK));
        hired(Change.OneMoreReader.likeTheFastest(station), Figure.READER_WEEK);
        adapter();
        fasterMedium();
        encoding();
        if (station.writing() == Order.ONE_AFTER_ANOTHER
                && station.destinations().size() > 1) {
            free(new Change.OtherWriting(DayPlans.STATION, Order.TOGETHER));
        }
        for (ReadBack.When when : List.of(ReadBack.When.READER_FREE, ReadBack.When.AFTER_WRAP)) {
            if (station.readBack().when() != when && station.readBack().when() != ReadBack.When.NEVER) {
                free(new Change.OtherReadBack(
                        DayPlans.STATION, new ReadBack(when, station.readBack().order())));
            }
        }
    }

    private Set<String> cardTypes() {
        Set<String> types = new LinkedHashSet<>();
        plan.cameras().stream().map(CameraShift::cardType).forEach(types::add);
        return types;
    }

    /** A new adapter at the reader where it brings most. */
    private void adapter() {
        DataRate rate = DataRate.ofBytesPerSecond(inputs.number(Figure.NEW_ADAPTER.key())
                .movePointRight(DayPlans.MB_DIGITS)
                .longValue());
        String type = plan.cameras().get(0).cardType();
        Optional<Reader> slowest = station.readers().stream()
                .filter(reader -> way(reader, type).isPresent())
                .min(Comparator.comparing(
                        reader -> way(reader, type).map(Way::rate).orElseThrow()));
        slowest.filter(reader -> way(reader, type).map(Way::rate).orElseThrow().compareTo(rate) < 0)
                .ifPresent(reader -> hired(
                        new Change.OtherWay(reader.name(), new Way(type, Sheet.NEW + " " + reader.name(), rate)),
                        Figure.ADAPTER_WEEK));
    }

    private static Optional<Way> way(Reader reader, String cardType) {
        return reader.ways().stream()
                .filter(way -> way.cardType().equals(cardType))
                .findFirst();
    }

    /** For the slowest copy a medium as fast as the fastest, or twice as fast where all are alike. */
    private void fasterMedium() {
        Destination slowest = station.destinations().stream()
                .min(Comparator.comparing(Destination::write))
                .orElseThrow();
        DataRate fastest = station.destinations().stream()
                .map(Destination::write)
                .max(Comparator.naturalOrder())
                .orElseThrow();
        DataRate write = fastest.compareTo(slowest.write()) > 0
                ? fastest
                : slowest.write().times(Fraction.of(2));
        DataRate read = slowest.read().compareTo(write) < 0 ? write : slowest.read();
        Long price = inputs.money(Figure.DRIVE_PRICE, money);
        tries.add(new Try(
                new Proposal(new Change.OtherSpeed(slowest.name(), write, read), price == null ? 0 : price, 0),
                price != null));
    }

    private void encoding() {
        Encoder encoder = station.encoder();
        for (Destination destination : station.destinations()) {
            if (destination.encoded()) {
                free(new Change.EncodingOff(destination.name()));
            } else if (encoder != null) {
                BigDecimal kept = inputs.number(Figure.KEPT.key()).movePointLeft(2);
                free(new Change.EncodingOn(destination.name(), encoder, kept.doubleValue()));
            }
        }
    }

    private void hired(Change change, Figure week) {
        Long price = inputs.money(week, money);
        tries.add(new Try(new Proposal(change, 0, price == null ? 0 : price), price != null));
    }

    private void free(Change change) {
        tries.add(new Try(new Proposal(change, 0, 0), true));
    }

    /** Of one of the tries; null if nobody said what it costs. */
    static @Nullable Long cost(Try one, int weeks) {
        return one.priced() ? one.proposal().costMinorUnits(weeks) : null;
    }
}

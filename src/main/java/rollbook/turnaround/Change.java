package rollbook.turnaround;

import java.util.ArrayList;
import java.util.List;
import rollbook.quantity.DataRate;

/** One thing that could be otherwise on a day. */
public sealed interface Change {

    /** @throws IllegalArgumentException if the plan doesn’t have what this changes */
    DayPlan applyTo(DayPlan plan);

    /** What it settles. Of changes that settle the same, a day can have one. */
    List<Object> settles();

    /** More cards of a kind. */
    record MoreCards(String cardType, int cards) implements Change {
        public MoreCards {
            Invalid.unless(cards > 0, "cards", "must be above zero");
        }

        @Override
        public DayPlan applyTo(DayPlan plan) {
            return plan.withCards(ChangedPlan.replace(
                    plan.cards(),
                    stock -> stock.cardType().equals(cardType),
                    stock -> stock.withCards(stock.cards() + cards),
                    "cardType " + cardType));
        }

        @Override
        public List<Object> settles() {
            return List.of("cards", cardType, cards);
        }
    }

    /**
     * One more reader at a station.
     *
     * @param reader with a name of its own, and adapters of its own if it needs any
     */
    record OneMoreReader(String station, Reader reader) implements Change {

        /** Like the one with the fastest way, the first of equals; it brings adapters of its own. */
        public static OneMoreReader likeTheFastest(Station station) {
            Reader fastest = station.readers().stream()
                    .reduce((one, other) -> fastestWay(other).compareTo(fastestWay(one)) > 0 ? other : one)
                    .orElseThrow();
            List<Way> ways = fastest.ways().stream()
                    .map(way ->
                            new Way(way.cardType(), way.adapter() == null ? null : another(way.adapter()), way.rate()))
                    .toList();
            return new OneMoreReader(station.name(), new Reader(another(fastest.name()), ways));
        }

        private static DataRate fastestWay(Reader reader) {
            return reader.ways().stream()
                    .map(Way::rate)
                    .max(DataRate::compareTo)
                    .orElse(DataRate.ZERO);
        }

        private static String another(String name) {
            return name + " +";
        }

        @Override
        public DayPlan applyTo(DayPlan plan) {
            return ChangedPlan.station(plan, station, there -> {
                List<Reader> readers = new ArrayList<>(there.readers());
                readers.add(reader);
                return there.withReaders(readers);
            });
        }

        @Override
        public List<Object> settles() {
            return List.of("reader", reader.name());
        }
    }

    /** A kind of card takes another way into a reader, such as through an adapter instead of directly. */
    record OtherWay(String reader, Way way) implements Change {
        @Override
        public DayPlan applyTo(DayPlan plan) {
            return ChangedPlan.reader(plan, reader, there -> {
                List<Way> ways = new ArrayList<>(there.ways());
                ways.removeIf(old -> old.cardType().equals(way.cardType()));
                ways.add(way);
                return new Reader(reader, ways);
            });
        }

        @Override
        public List<Object> settles() {
            return List.of("way", reader, way.cardType());
        }
    }

    /** A destination’s copies pass an encoder, which becomes the station’s. */
    record EncodingOn(String destination, Encoder encoder, double keptShare) implements Change {
        @Override
        public DayPlan applyTo(DayPlan plan) {
            return ChangedPlan.destination(
                    plan,
                    destination,
                    there -> encoder,
                    old -> new Destination(destination, old.write(), old.read(), true, keptShare));
        }

        @Override
        public List<Object> settles() {
            return List.of("encoding", destination);
        }
    }

    /** A destination gets the recorded bytes as they are. */
    record EncodingOff(String destination) implements Change {
        @Override
        public DayPlan applyTo(DayPlan plan) {
            return ChangedPlan.destination(
                    plan, destination, old -> Destination.asRecorded(destination, old.write(), old.read()));
        }

        @Override
        public List<Object> settles() {
            return List.of("encoding", destination);
        }
    }

    /** A destination writes and reads faster, or slower. */
    record OtherSpeed(String destination, DataRate write, DataRate read) implements Change {
        @Override
        public DayPlan applyTo(DayPlan plan) {
            return ChangedPlan.destination(
                    plan,
                    destination,
                    old -> new Destination(destination, write, read, old.encoded(), old.keptShare()));
        }

        @Override
        public List<Object> settles() {
            return List.of("speed", destination);
        }
    }

    /** One more copy of each card. */
    record OneMoreDestination(String station, Destination destination) implements Change {
        @Override
        public DayPlan applyTo(DayPlan plan) {
            return ChangedPlan.station(plan, station, there -> {
                List<Destination> destinations = new ArrayList<>(there.destinations());
                destinations.add(destination);
                return there.withDestinations(destinations, there.encoder());
            });
        }

        @Override
        public List<Object> settles() {
            return List.of("destination", destination.name());
        }
    }

    /** The destinations are written in another order. */
    record OtherWriting(String station, Order order) implements Change {
        @Override
        public DayPlan applyTo(DayPlan plan) {
            return ChangedPlan.station(plan, station, there -> there.withWriting(order));
        }

        @Override
        public List<Object> settles() {
            return List.of("writing", station);
        }
    }

    /** Copies are read back at another time or in another order, such as later, or when the reader has its next card. */
    record OtherReadBack(String station, ReadBack readBack) implements Change {
        @Override
        public DayPlan applyTo(DayPlan plan) {
            return ChangedPlan.station(plan, station, there -> there.withReadBack(readBack));
        }

        @Override
        public List<Object> settles() {
            return List.of("read-back", station);
        }
    }
}

package rollbook.turnaround;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A station’s readers and adapters, and which of them a card may have. */
final class Readers {
    /**
     * A way that a card may take.
     *
     * @param reader its number at the station
     */
    record Route(int reader, @Nullable Thing adapter, double bytesPerMilli) {}

    private final List<Thing> readers = new ArrayList<>();
    private final List<Thing> adapters = new ArrayList<>();
    private final List<List<Route>> routesByKind = new ArrayList<>();
    private int free;

    Readers(Station station, List<CardStock> cards) {
        for (Reader reader : station.readers()) {
            readers.add(new Thing(new Part(Part.Kind.READER, reader.name())));
        }
        free = readers.size();
        for (CardStock stock : cards) {
            List<Route> routes = new ArrayList<>();
            for (int reader = 0; reader < readers.size(); reader++) {
                for (Way way : station.readers().get(reader).ways()) {
                    if (way.cardType().equals(stock.cardType())) {
                        routes.add(new Route(reader, adapter(way.adapter()), BytesPerMilli.of(way.rate())));
                    }
                }
            }
            routes.sort(Comparator.comparingDouble(Route::bytesPerMilli).reversed());
            routesByKind.add(routes);
        }
    }

    private @Nullable Thing adapter(@Nullable String name) {
        if (name == null) {
            return null;
        }
        for (Thing adapter : adapters) {
            if (adapter.part.name().equals(name)) {
                return adapter;
            }
        }
        Thing adapter = new Thing(new Part(Part.Kind.ADAPTER, name));
        adapters.add(adapter);
        return adapter;
    }

    Thing reader(int number) {
        return readers.get(number);
    }

    boolean anyFree() {
        return free > 0;
    }

    /** The fastest, of equals the first listed. */
    @Nullable
    Route freeFor(int kindOfCard) {
        for (Route route : routesByKind.get(kindOfCard)) {
            if (readers.get(route.reader()).isFree()
                    && (route.adapter() == null || route.adapter().isFree())) {
                return route;
            }
        }
        return null;
    }

    void take(Route route, long now) {
        readers.get(route.reader()).take(now);
        if (route.adapter() != null) {
            route.adapter().take(now);
        }
        free--;
    }

    void free(Route route, long now) {
        readers.get(route.reader()).free(now);
        if (route.adapter() != null) {
            route.adapter().free(now);
        }
        free++;
    }

    /** A reader that nobody has; ask for its card first. */
    void die(int reader) {
        readers.get(reader).die();
        free--;
    }

    /** Readers, then adapters. */
    List<Thing> all() {
        List<Thing> all = new ArrayList<>(readers);
        all.addAll(adapters);
        return all;
    }
}

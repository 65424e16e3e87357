package rollbook.turnaround;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;

/**
 * One shooting day before it is played. Instants are milliseconds since midnight of the day’s date and may pass 24 hours.
 * Names of cameras, stations, readers and destinations are each given once; an adapter belongs to one station.
 */
public record DayPlan(
        List<CameraShift> cameras, List<CardStock> cards, Runner runner, List<Station> stations, List<Mishap> mishaps) {
    public DayPlan {
        cameras = List.copyOf(cameras);
        cards = List.copyOf(cards);
        stations = List.copyOf(stations);
        mishaps = List.copyOf(mishaps);
        Invalid.unless(!cameras.isEmpty(), "cameras", "must not be empty");
        Invalid.unless(!stations.isEmpty(), "stations", "must not be empty");
        once(cameras, CameraShift::name, "cameras");
        once(cards, CardStock::cardType, "cards");
        once(stations, Station::name, "stations");
        once(stations.stream().flatMap(s -> s.readers().stream()).toList(), Reader::name, "readers");
        once(stations.stream().flatMap(s -> s.destinations().stream()).toList(), Destination::name, "destinations");
        once(adapters(stations), Function.identity(), "adapters of stations");
        for (CameraShift camera : cameras) {
            check(camera, stock(cards, camera), station(stations, camera));
        }
        List<String> dying = dying(mishaps);
        once(dying, Function.identity(), "mishaps of readers");
        for (String reader : dying) {
            Invalid.unless(
                    stations.stream()
                            .flatMap(s -> s.readers().stream())
                            .anyMatch(there -> there.name().equals(reader)),
                    "mishaps",
                    "must name a reader that is there: " + reader);
        }
    }

    /** The same day with these cards. */
    public DayPlan withCards(List<CardStock> stocks) {
        return new DayPlan(cameras, stocks, runner, stations, mishaps);
    }

    /** The same day with these stations. */
    public DayPlan withStations(List<Station> others) {
        return new DayPlan(cameras, cards, runner, others, mishaps);
    }

    private static void check(CameraShift camera, CardStock stock, Station station) {
        Invalid.unless(
                stock.capacityBytes() >= BytesPerMilli.of(camera.recordedRate()),
                "capacityBytes",
                "must hold a millisecond of camera " + camera.name());
        Invalid.unless(
                station.readers().stream().anyMatch(reader -> reader.takes(camera.cardType())),
                "readers",
                "must take the cards of camera " + camera.name());
    }

    private static CardStock stock(List<CardStock> cards, CameraShift camera) {
        return cards.stream()
                .filter(stock -> stock.cardType().equals(camera.cardType()))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("cards must have those of camera " + camera.name()));
    }

    private static Station station(List<Station> stations, CameraShift camera) {
        return stations.stream()
                .filter(station -> station.name().equals(camera.station()))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("stations must have that of camera " + camera.name()));
    }

    private static List<String> adapters(List<Station> stations) {
        return stations.stream()
                .flatMap(station -> station.readers().stream()
                        .flatMap(reader -> reader.ways().stream())
                        .map(Way::adapter)
                        .filter(adapter -> adapter != null)
                        .distinct())
                .toList();
    }

    private static List<String> dying(List<Mishap> mishaps) {
        return mishaps.stream()
                .filter(Mishap.ReaderDies.class::isInstance)
                .map(mishap -> ((Mishap.ReaderDies) mishap).reader())
                .toList();
    }

    private static <T> void once(List<T> things, Function<T, String> name, String field) {
        Set<String> names = new HashSet<>();
        for (T thing : things) {
            Invalid.unless(
                    names.add(name.apply(thing)), field, "must each have a name of its own: " + name.apply(thing));
        }
    }
}

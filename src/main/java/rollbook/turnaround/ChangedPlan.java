package rollbook.turnaround;

import java.util.List;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/** Plans with one thing replaced. What isn’t there can’t be changed: {@link IllegalArgumentException}. */
final class ChangedPlan {
    private ChangedPlan() {}

    static DayPlan station(DayPlan plan, String station, UnaryOperator<Station> change) {
        return plan.withStations(
                replace(plan.stations(), there -> there.name().equals(station), change, "station " + station));
    }

    static DayPlan destination(DayPlan plan, String destination, UnaryOperator<Destination> change) {
        return destination(plan, destination, Station::encoder, change);
    }

    /** @param encoder the station’s from then on */
    static DayPlan destination(
            DayPlan plan,
            String destination,
            Function<Station, @Nullable Encoder> encoder,
            UnaryOperator<Destination> change) {
        Predicate<Destination> named = one -> one.name().equals(destination);
        String what = "destination " + destination;
        return plan.withStations(replace(
                plan.stations(),
                there -> there.destinations().stream().anyMatch(named),
                there -> there.withDestinations(
                        replace(there.destinations(), named, change, what), encoder.apply(there)),
                what));
    }

    static DayPlan reader(DayPlan plan, String reader, UnaryOperator<Reader> change) {
        Predicate<Reader> named = one -> one.name().equals(reader);
        return plan.withStations(replace(
                plan.stations(),
                there -> there.readers().stream().anyMatch(named),
                there -> there.withReaders(replace(there.readers(), named, change, "reader " + reader)),
                "reader " + reader));
    }

    static <T> List<T> replace(List<T> things, Predicate<T> which, UnaryOperator<T> change, String what) {
        Invalid.unless(things.stream().anyMatch(which), what, "must be in the plan");
        return things.stream()
                .map(thing -> which.test(thing) ? change.apply(thing) : thing)
                .toList();
    }
}

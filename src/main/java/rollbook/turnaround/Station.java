package rollbook.turnaround;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.quantity.DataRate;

/**
 * Where cards are offloaded. The card that has waited longest and for which a reader is free gets its fastest way.
 *
 * @param hostBus what readers and destinations share, if it may be too narrow
 * @param encoder which the encoded destinations need
 * @param destinations all of them get each card
 * @param handling a person puts the card in; holds the reader
 * @param clearing from proven until blank again, such as waiting for a second look
 * @param work how the bytes of an offload take more or less time than the speeds say
 * @param repeatChance that an offload proves bad at its end and starts again
 */
public record Station(
        String name,
        List<Reader> readers,
        @Nullable DataRate hostBus,
        @Nullable Encoder encoder,
        List<Destination> destinations,
        Order writing,
        ReadBack readBack,
        Delay handling,
        Delay clearing,
        Spread work,
        double repeatChance) {
    public Station {
        Invalid.ifBlank(name, "name");
        readers = List.copyOf(readers);
        destinations = List.copyOf(destinations);
        Invalid.unless(!readers.isEmpty(), "readers", "must not be empty");
        Invalid.unless(!destinations.isEmpty(), "destinations", "must not be empty");
        Invalid.unless(hostBus == null || !hostBus.isZero(), "hostBus", "must be above zero");
        Invalid.unless(
                encoder != null || destinations.stream().noneMatch(Destination::encoded),
                "encoder",
                "must be there for encoded destinations");
        Invalid.unless(repeatChance >= 0 && repeatChance < 1, "repeatChance", "must be at least 0 and below 1");
    }

    Station withReaders(List<Reader> others) {
        return new Station(
                name,
                others,
                hostBus,
                encoder,
                destinations,
                writing,
                readBack,
                handling,
                clearing,
                work,
                repeatChance);
    }

    Station withDestinations(List<Destination> others, @Nullable Encoder otherEncoder) {
        return new Station(
                name,
                readers,
                hostBus,
                otherEncoder,
                others,
                writing,
                readBack,
                handling,
                clearing,
                work,
                repeatChance);
    }

    Station withWriting(Order other) {
        return new Station(
                name, readers, hostBus, encoder, destinations, other, readBack, handling, clearing, work, repeatChance);
    }

    Station withReadBack(ReadBack other) {
        return new Station(
                name, readers, hostBus, encoder, destinations, writing, other, handling, clearing, work, repeatChance);
    }
}

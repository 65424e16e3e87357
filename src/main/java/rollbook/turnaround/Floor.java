package rollbook.turnaround;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A station’s queue and readers: who is next, and in which reader. */
final class Floor {
    private final int index;
    private final Station station;
    private final Playing day;
    private final Readers readers;
    private final Copying copying;
    private final int heldByReaders;
    private final int[] heldByReader;
    private final List<Timeline.Lane> lanes = new ArrayList<>();
    private final @Nullable Offload[] inReaders;
    private final int[] stamps;
    private final List<Card> queue = new ArrayList<>();
    private final Draws.Stream handlings;
    private final Draws.Stream works;
    private final Draws.Stream repeats;
    private int offloads;
    private long queuedMillis;
    private long stayMillis;
    private int greatestQueue;

    Floor(int index, Station station, Playing day) {
        this.index = index;
        this.station = station;
        this.day = day;
        readers = new Readers(station, day.plan.cards());
        heldByReaders = day.hours.add(new Part(Part.Kind.READERS, station.name()));
        int count = station.readers().size();
        heldByReader = new int[count];
        inReaders = new Offload[count];
        stamps = new int[count];
        for (int i = 0; i < count; i++) {
            heldByReader[i] = day.hours.add(readers.reader(i).part);
            lanes.add(day.timeline.lane(
                    Activity.Lane.READER, readers.reader(i).part.name()));
        }
        copying = new Copying(index, station, this, day);
        handlings = day.draws.stream("handling", station.name());
        works = day.draws.stream("work", station.name());
        repeats = day.draws.stream("repeat", station.name());
    }

    Copying copying() {
        return copying;
    }

    void arrive(Card card, long now) {
        card.arrivedMillis = now;
        enqueue(card, queue.size(), now);
    }

    private void enqueue(Card card, int place, long now) {
        card.queuedMillis = now;
        card.lane.enter(Activity.Kind.QUEUED, now, card, null);
        queue.add(place, card);
    }

    /** The first in the queue for which a reader is free gets the fastest, and so on. */
    void assign(long now) {
        for (int i = 0; i < queue.size() && readers.anyFree(); ) {
            Readers.Route route = readers.freeFor(queue.get(i).kind);
            if (route == null) {
                i++;
            } else {
                start(queue.remove(i), route, now);
            }
        }
        greatestQueue = Math.max(greatestQueue, queue.size());
    }

    private void start(Card card, Readers.Route route, long now) {
        queuedMillis += now - card.queuedMillis;
        day.hours.hold(heldByReaders, card.queuedMillis, now);
        readers.take(route, now);
        offloads++;
        int reader = route.reader();
        Offload offload = new Offload(
                card,
                route,
                heldByReader[reader],
                readers.reader(reader),
                lanes.get(reader),
                card.bytes() * works.factor(station.work()),
                day.mishaps.nextProvesBad() | repeats.hits(station.repeatChance()));
        offload.show(Activity.Kind.HANDLING, now);
        inReaders[reader] = offload;
        long handling = station.handling().millis(handlings);
        day.agenda.enter(now + handling, Event.CARD_IN_READER, index, stamp(reader));
    }

    /** Which card in which reader, in one number. */
    private int stamp(int reader) {
        return ++stamps[reader] * inReaders.length + reader;
    }

    boolean handled(int stamp, long now) {
        int reader = stamp % inReaders.length;
        Offload offload = inReaders[reader];
        if (offload == null || stamps[reader] != stamp / inReaders.length) {
            return false;
        }
        copying.copy(offload, now);
        return true;
    }

    /** The reader is free for the next card. */
    void release(Offload offload, long now) {
        if (offload.holdsReader) {
            offload.leaveReader(now);
            readers.free(offload.route, now);
            inReaders[offload.route.reader()] = null;
        }
    }

    /** Copies that proved bad, or never came about: the card is next. */
    void startAgain(Card card, long now) {
        enqueue(card, 0, now);
    }

    /** @return whether that made a difference */
    boolean readerDies(String name, long now) {
        for (int reader = 0; reader < inReaders.length; reader++) {
            if (readers.reader(reader).part.name().equals(name)) {
                Offload offload = inReaders[reader];
                if (offload != null) {
                    stamps[reader]++;
                    release(offload, now);
                    copying.breakOff(offload, now);
                    startAgain(offload.card, now);
                }
                readers.die(reader);
                return offload != null;
            }
        }
        return false;
    }

    void proven(Card card, long now) {
        stayMillis += now - card.arrivedMillis;
        day.proven(now);
    }

    StationDay result() {
        return new StationDay(station.name(), offloads, queuedMillis, stayMillis, greatestQueue);
    }

    /** Cards that no reader is left for, at the end of the day. */
    int cardsQueued() {
        return queue.size();
    }

    /** @param spanMillis the time that utilisation is a part of */
    List<PartUse> uses(long spanMillis) {
        List<PartUse> uses = new ArrayList<>();
        for (Thing thing : readers.all()) {
            uses.add(PartUse.of(thing.part, thing.busyMillis(), spanMillis));
        }
        uses.addAll(copying.uses(spanMillis));
        return uses;
    }
}

package rollbook.turnaround;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** What happens to a card once it is in a reader: its bytes are written, read back, and then the card is cleared. */
final class Copying {
    private final int index;
    private final Station station;
    private final Floor floor;
    private final Playing day;
    private final int destinations;
    private final Weights weights;
    private final Bandwidth bandwidth;
    private final List<Timeline.Lane> lanes = new ArrayList<>();
    private final List<Offload> forLater = new ArrayList<>();
    private final Draws.Stream clearings;
    private final Draws.Stream backs;
    private int stamp;
    private boolean wrapped;

    Copying(int index, Station station, Floor floor, Playing day) {
        this.index = index;
        this.station = station;
        this.floor = floor;
        this.day = day;
        destinations = station.destinations().size();
        weights = new Weights(station);
        bandwidth =
                new Bandwidth(weights.parts().stream().mapToInt(day.hours::add).toArray(), day.hours);
        for (Destination destination : station.destinations()) {
            lanes.add(day.timeline.lane(Activity.Lane.DESTINATION, destination.name()));
        }
        clearings = day.draws.stream("clearing", station.name());
        backs = day.draws.stream("back", station.name());
    }

    void copy(Offload offload, long now) {
        offload.show(Activity.Kind.COPYING, now);
        begin(offload, now);
    }

    /** The first flow was to be done at this instant, unless the shares have changed since. */
    boolean flowDone(int stampOfEvent, long now) {
        if (stampOfEvent != stamp) {
            return false;
        }
        for (Flow flow : bandwidth.done(now)) {
            Offload offload = flow.offload;
            draw(flow, now);
            offload.openFlows--;
            if (offload.openFlows == 0) {
                offload.step++;
                goOn(offload, now);
            }
        }
        return true;
    }

    private void draw(Flow flow, long now) {
        Activity.Kind kind = flow.offload.reading ? Activity.Kind.READING_BACK : Activity.Kind.WRITING;
        for (int i = flow.from; i < flow.to; i++) {
            lanes.get(i).add(kind, flow.startedMillis, now, flow.offload.card);
        }
    }

    private void goOn(Offload offload, long now) {
        if (order(offload) == Order.ONE_AFTER_ANOTHER && offload.step < destinations) {
            begin(offload, now);
        } else if (offload.reading) {
            judge(offload, now);
        } else {
            written(offload, now);
        }
    }

    private Order order(Offload offload) {
        return offload.reading ? station.readBack().order() : station.writing();
    }

    /** A step: all destinations, or the one whose turn it is. */
    private void begin(Offload offload, long now) {
        boolean together = order(offload) == Order.TOGETHER;
        int from = together ? 0 : offload.step;
        int to = together ? destinations : from + 1;
        if (offload.reading) {
            for (int i = from; i < to; i++) {
                start(new Flow(offload, i, i + 1, weights.ofReading(i), Double.POSITIVE_INFINITY, 0, now), now);
            }
        } else {
            double[] share = weights.ofWriting(from, to, Objects.requireNonNull(offload.card.camera()));
            start(new Flow(offload, from, to, share, offload.route.bytesPerMilli(), offload.ownWay, now), now);
        }
    }

    private void start(Flow flow, long now) {
        flow.offload.openFlows++;
        bandwidth.start(flow, now);
    }

    private void written(Offload offload, long now) {
        switch (station.readBack().when()) {
            case NEVER -> judge(offload, now);
            case HOLDING_READER -> readBack(offload, now);
            case READER_FREE -> {
                floor.release(offload, now);
                readBack(offload, now);
            }
            case AFTER_WRAP -> {
                floor.release(offload, now);
                if (wrapped) {
                    readBack(offload, now);
                } else {
                    offload.show(Activity.Kind.UNPROVEN, now);
                    forLater.add(offload);
                }
            }
        }
    }

    private void readBack(Offload offload, long now) {
        offload.reading = true;
        offload.step = 0;
        offload.show(Activity.Kind.READING_BACK, now);
        begin(offload, now);
    }

    /** The last camera of the day has wrapped. */
    void wrap(long now) {
        wrapped = true;
        forLater.forEach(offload -> readBack(offload, now));
        forLater.clear();
    }

    private void judge(Offload offload, long now) {
        floor.release(offload, now);
        Card card = offload.card;
        if (offload.provesBad) {
            floor.startAgain(card, now);
        } else {
            floor.proven(card, now);
            card.lane.enter(Activity.Kind.CLEARING, now, card, null);
            day.agenda.enter(now + station.clearing().millis(clearings), Event.CARD_CLEARED, card.index, index);
        }
    }

    void cleared(Card card, long now) {
        card.lane.enter(Activity.Kind.RETURNING, now, card, null);
        long back = day.plan.runner().back().millis(backs);
        day.agenda.enter(now + back, Event.CARD_RETURNED, card.index, 0);
    }

    void breakOff(Offload offload, long now) {
        for (Flow flow : bandwidth.stop(offload, now)) {
            draw(flow, now);
        }
    }

    /** Once all of an instant has happened. */
    void share(long now) {
        if (bandwidth.isChanged()) {
            long first = bandwidth.share(now);
            stamp++;
            if (first < Long.MAX_VALUE) {
                day.agenda.enter(first, Event.FLOW_DONE, index, stamp);
            }
        }
    }

    List<PartUse> uses(long spanMillis) {
        List<PartUse> uses = new ArrayList<>();
        for (int i = 0; i < weights.parts().size(); i++) {
            uses.add(PartUse.of(weights.parts().get(i), bandwidth.busyMillis(i), spanMillis));
        }
        return uses;
    }
}

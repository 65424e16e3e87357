package rollbook.turnaround;

import java.util.ArrayList;
import java.util.List;

/** Carries the pulled cards of a station’s cameras to it. */
final class Errands {
    private final int station;
    private final Runner runner;
    private final Agenda agenda;
    private final Draws.Stream walks;
    private final List<List<Card>> trips = new ArrayList<>();
    private List<Card> waiting = new ArrayList<>();
    private int camerasShooting;
    private boolean waitedLongest;

    Errands(int station, String stationName, int cameras, Playing day) {
        this.station = station;
        this.camerasShooting = cameras;
        runner = day.plan.runner();
        agenda = day.agenda;
        walks = day.draws.stream("walk", stationName);
    }

    void expose(Card card, long now) {
        card.lane.enter(Activity.Kind.PULLED, now, card, null);
        if (waiting.isEmpty()) {
            agenda.enter(now + runner.longestWaitMillis(), Event.RUNNER_LEAVES, station, trips.size());
        }
        waiting.add(card);
    }

    void cameraWrapped() {
        camerasShooting--;
    }

    /** @param trip which the cards that now have waited longest were to be */
    boolean waitedLongest(int trip) {
        waitedLongest = trip == trips.size();
        return waitedLongest;
    }

    void leaveIfDue(long now) {
        if (waiting.isEmpty() || waiting.size() < runner.batch() && camerasShooting > 0 && !waitedLongest) {
            return;
        }
        for (Card card : waiting) {
            card.lane.enter(Activity.Kind.CARRIED, now, card, null);
        }
        agenda.enter(now + runner.walk().millis(walks), Event.RUNNER_ARRIVES, station, trips.size());
        trips.add(waiting);
        waiting = new ArrayList<>();
        waitedLongest = false;
    }

    List<Card> arrived(int trip) {
        return trips.get(trip);
    }
}

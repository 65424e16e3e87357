package rollbook.turnaround;

import java.util.ArrayList;
import java.util.List;

/** A day being played: hands each event to whom it concerns, and lets what became free be taken once its instant is over. */
final class Playing {
    final DayPlan plan;
    final Draws draws;
    final Agenda agenda = new Agenda();
    final Timeline timeline;
    final Hours hours = new Hours();
    final Shelf shelf;
    final Mishaps mishaps;
    private final List<Camera> cameras = new ArrayList<>();
    private final List<Card> cards = new ArrayList<>();
    private final List<Errands> errands = new ArrayList<>();
    private final List<Floor> floors = new ArrayList<>();
    private final List<String> dyingReaders = new ArrayList<>();
    private final long startMillis;
    private final long wrapMillis;
    private int camerasShooting;
    private long lastProvenMillis = Long.MIN_VALUE;
    private long endMillis;

    Playing(DayPlan plan, Draws draws, boolean withActivities) {
        this.plan = plan;
        this.draws = draws;
        timeline = new Timeline(withActivities);
        shelf = new Shelf(plan.cards().size());
        mishaps = new Mishaps(plan.mishaps());
        startMillis =
                plan.cameras().stream().mapToLong(CameraShift::callMillis).min().orElseThrow();
        wrapMillis =
                plan.cameras().stream().mapToLong(CameraShift::wrapMillis).max().orElseThrow();
        camerasShooting = plan.cameras().size();
        setUp();
    }

    private void setUp() {
        for (int i = 0; i < plan.stations().size(); i++) {
            String name = plan.stations().get(i).name();
            int feeding = (int) plan.cameras().stream()
                    .filter(camera -> camera.station().equals(name))
                    .count();
            errands.add(new Errands(i, name, feeding, this));
        }
        for (CameraShift shift : plan.cameras()) {
            int kind = kind(shift.cardType());
            long bytes = plan.cards().get(kind).capacityBytes();
            cameras.add(new Camera(cameras.size(), kind, shift, bytes, errands.get(station(shift)), this));
        }
        for (int kind = 0; kind < plan.cards().size(); kind++) {
            CardStock stock = plan.cards().get(kind);
            for (int number = 1; number <= stock.cards(); number++) {
                Card card = new Card(cards.size(), kind, stock.cardType() + " " + number, timeline);
                cards.add(card);
                shelf.put(card, startMillis);
            }
        }
        for (Station station : plan.stations()) {
            floors.add(new Floor(floors.size(), station, this));
        }
        for (Mishap mishap : plan.mishaps()) {
            if (mishap instanceof Mishap.ReaderDies dies) {
                agenda.enter(dies.atMillis(), Event.READER_DIES, dyingReaders.size(), 0);
                dyingReaders.add(dies.reader());
            }
        }
    }

    private int kind(String cardType) {
        int kind = 0;
        while (!plan.cards().get(kind).cardType().equals(cardType)) {
            kind++;
        }
        return kind;
    }

    private int station(CameraShift shift) {
        int station = 0;
        while (!plan.stations().get(station).name().equals(shift.station())) {
            station++;
        }
        return station;
    }

    DayResult play() {
        while (!agenda.isEmpty()) {
            agenda.next();
            long now = agenda.millis();
            if (happen(now)) {
                endMillis = now;
            }
            if (!agenda.hasAt(now)) {
                settle(now);
            }
        }
        return result();
    }

    /** @return false if it had been called off */
    private boolean happen(long now) {
        int entity = agenda.entity();
        int stamp = agenda.stamp();
        return switch (agenda.event()) {
            case FLOW_DONE -> floors.get(entity).copying().flowDone(stamp, now);
            case CAMERA_STOP -> cameras.get(entity).stop(stamp, now);
            case CAMERA_DUE -> cameras.get(entity).due(stamp, now);
            case CAMERA_LOADED -> cameras.get(entity).load(now);
            case RUNNER_LEAVES -> errands.get(entity).waitedLongest(stamp);
            case CARD_IN_READER -> floors.get(entity).handled(stamp, now);
            case READER_DIES -> readerDies(dyingReaders.get(entity), now);
            default -> {
                happenForSure(entity, stamp, now);
                yield true;
            }
        };
    }

    private void happenForSure(int entity, int stamp, long now) {
        switch (agenda.event()) {
            case CARD_CLEARED -> floors.get(stamp).copying().cleared(cards.get(entity), now);
            case CARD_RETURNED -> shelf.put(cards.get(entity), now);
            case CAMERA_CALL -> cameras.get(entity).call(now);
            case BREAK_BEGINS -> cameras.get(entity).pause(now);
            case BREAK_OVER -> cameras.get(entity).resume(now);
            case CAMERA_WRAP -> wrap(cameras.get(entity), now);
            case RUNNER_ARRIVES ->
                errands.get(entity)
                        .arrived(stamp)
                        .forEach(card -> floors.get(entity).arrive(card, now));
            default -> throw new IllegalStateException(agenda.event().name());
        }
    }

    private void wrap(Camera camera, long now) {
        camera.wrap(now);
        camerasShooting--;
        if (camerasShooting == 0) {
            floors.forEach(floor -> floor.copying().wrap(now));
        }
    }

    private boolean readerDies(String reader, long now) {
        boolean difference = false;
        for (Floor floor : floors) {
            difference |= floor.readerDies(reader, now);
        }
        return difference;
    }

    /** Nothing more happens at this instant: what is free is given away, which may make more happen at it. */
    private void settle(long now) {
        shelf.handOut(now);
        errands.forEach(errand -> errand.leaveIfDue(now));
        floors.forEach(floor -> floor.assign(now));
        if (!agenda.hasAt(now)) {
            floors.forEach(floor -> floor.copying().share(now));
        }
    }

    void proven(long now) {
        lastProvenMillis = now;
    }

    private DayResult result() {
        long lastProven = lastProvenMillis == Long.MIN_VALUE ? wrapMillis : lastProvenMillis;
        long span = Math.max(lastProven, wrapMillis) - startMillis;
        return new DayResult(
                cameras.stream().map(Camera::result).toList(),
                floors.stream().map(Floor::result).toList(),
                floors.stream().flatMap(floor -> floor.uses(span).stream()).toList(),
                hours.limits(),
                startMillis,
                wrapMillis,
                lastProven,
                endMillis,
                floors.stream().mapToInt(Floor::cardsQueued).sum(),
                timeline.activities(endMillis));
    }
}
